/** How much a street file may hold, so that no file exhausts the memory. */
export const MOST = {
  /** Of a file as it is on the disk, and unpacked. */
  megabytes: 4000,
  /** 16 bytes of memory each. */
  nodes: 20_000_000,
  ways: 4_000_000,
  relations: 500_000,
  features: 500_000,
  /** Ways, areas and points that a clip keeps. */
  kept: 200_000,
  /** Ways that wait with their tags for nodes which have not come. */
  waiting: 500_000,
  /** Attributes of one element of XML. */
  attributes: 100,
  /** Characters from one tag of XML to the next. */
  tagLength: 1_000_000,
  /** Texts of one block of PBF. */
  strings: 4_000_000,
  /** Of XML elements. */
  depth: 16,
  /** Characters of a broken text in which the place of the fault is looked for. */
  searched: 1_000_000,
} as const;
