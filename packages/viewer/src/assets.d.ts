/** Files that the build copies and names by their address. */
declare module '*.gpx?url' {
  const address: string;
  export default address;
}
declare module '*.geojson?url' {
  const address: string;
  export default address;
}
