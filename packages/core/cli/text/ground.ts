/** What a street file holds and what of it is kept, as tables for people. */
import type { GroundDocument } from '../../src/export/groundDocument.ts';
import type { View } from '../findings.ts';
import { table } from '../tables.ts';
import { heading, page, section } from './blocks.ts';
import { paragraph } from '../lineBreaks.ts';

interface Asked {
  readonly file: string;
  readonly out: string | undefined;
  readonly bytes: number;
}

const FORMATS = { xml: 'OpenStreetMap XML', pbf: 'OpenStreetMap PBF', geojson: 'GeoJSON' } as const;
const count = (value: number): string => value.toLocaleString('en');

export function groundPage(document: GroundDocument, { file, out, bytes }: Asked, { screen }: View): string {
  const { format, date, credit, licence } = document;
  const head = heading([file, FORMATS[format]], screen);
  const facts = [
    ['Date of the data', date ?? 'the file does not tell'],
    ['Credit', licence === null ? credit : `${credit}, ${licence}`],
  ];
  const next =
    out === undefined
      ? 'To keep it beside the plan, add --out ground.geojson.'
      : `${out} holds it, ${count(Math.ceil(bytes / 1000))} kB. Show the credit wherever the map is shown.`;
  const blocks = [
    `${head}\n${table(['', ''], facts, screen)}`,
    section('In the file', table(['What', ' Count'], readRows(document), screen), screen),
    section('Within 300 m of a course', table(['What', ' Count'], keptRows(document), screen), screen),
    section('Left out', table(['What', ' Count'], skippedRows(document), screen), screen),
    paragraph(next, screen.width),
  ];
  return page(blocks, screen);
}

const readRows = ({ format, read }: GroundDocument): string[][] =>
  format === 'geojson'
    ? [['features', count(read.features)]]
    : [
        ['nodes', count(read.nodes)],
        ['ways', count(read.ways)],
        ['relations', count(read.relations)],
        ['buildings among ways and relations', count(read.buildings)],
      ];

const keptRows = ({ kept }: GroundDocument): string[][] => [
  ['streets, paths and other lines, in parts', count(kept.ways)],
  ['buildings, water and other areas', count(kept.areas)],
  ['points', count(kept.points)],
];

const skippedRows = ({ skipped }: GroundDocument): string[][] => [
  ['relations that are not areas, such as bus routes', count(skipped.relations)],
  ['areas whose outline is not complete in the file', count(skipped.openAreas)],
  ['lines kept in part: the file lacks some of their nodes', count(skipped.cutWays)],
  ['elements that could not be read', count(skipped.broken)],
];
