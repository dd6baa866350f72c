/** What a file is meant to be, by its name, and where the name says nothing by what it begins with. */

export interface NamedFile {
  /** With its folder where the browser gives one. */
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

export interface Sorted {
  readonly plans: readonly NamedFile[];
  readonly gpx: readonly NamedFile[];
  readonly drawings: readonly NamedFile[];
  readonly results: readonly NamedFile[];
  readonly others: readonly NamedFile[];
}

export const lastName = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

/** What a file begins with, whatever its encoding: enough to tell one kind from another. */
const beginning = ({ bytes }: NamedFile, length: number): string => new TextDecoder().decode(bytes.subarray(0, length));

/** What a file is meant to be, by its name, and where the name says nothing by its first character. */
function kindOf(file: NamedFile): keyof Sorted {
  const name = file.name.toLowerCase();
  if (name.endsWith('.gpx')) return 'gpx';
  if (name.endsWith('.geojson')) return 'drawings';
  if (name.endsWith('.csv')) return 'results';
  if (name.endsWith('.json'))
    return /"type"\s*:\s*"FeatureCollection"/u.test(beginning(file, 2000)) ? 'drawings' : 'plans';
  const first = beginning(file, 200)
    .replace(/^\uFEFF/u, '')
    .trimStart()[0];
  return first === '<' ? 'gpx' : first === '{' ? 'plans' : 'others';
}

/** Whether a name alone says that a file is for a plan. */
export const hasKnownEnding = (name: string): boolean => /\.(?:gpx|geojson|csv|json)$/iu.test(name);

/** Whether a file is nothing that a plan can use. */
export const isForeign = (file: NamedFile): boolean => kindOf(file) === 'others';

export const sort = (files: readonly NamedFile[]): Sorted => {
  const of = (kind: keyof Sorted): NamedFile[] => files.filter((file) => kindOf(file) === kind);
  return { plans: of('plans'), gpx: of('gpx'), drawings: of('drawings'), results: of('results'), others: of('others') };
};
