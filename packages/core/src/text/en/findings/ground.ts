/** Reading street files: what was found, what was expected, what to do. */
import type { GroundBound, GroundFormat, GroundParams } from '../../params/ground.ts';
import type { TextsOf } from '../../sentence.ts';
import { gpx, XML } from './gpx.ts';

const FORMATS: { readonly [format in GroundFormat]: string } = {
  xml: 'the XML',
  pbf: 'the PBF',
  geojson: 'the JSON',
  gzip: 'the compressed file',
};

const BOUNDS: { readonly [bound in GroundBound]: (most: string) => string } = {
  megabytes: (most) => `The street file holds more than ${most} MB.`,
  nodes: (most) => `The street file has more than ${most} nodes.`,
  ways: (most) => `The street file has more than ${most} ways.`,
  relations: (most) => `The street file has more than ${most} relations.`,
  features: (most) => `The street file has more than ${most} features.`,
  attributes: (most) => `An element has more than ${most} attributes.`,
  tagLength: (most) => `There are more than ${most} characters from one tag to the next.`,
  depth: (most) => `Elements are nested more than ${most} deep.`,
  kept: (most) => `More than ${most} streets, areas and points lie beside the courses.`,
};

const SMALLER = 'Save a smaller extract around the courses.';
const SAVE_AGAIN = 'Save the street file again.';

export const ground: TextsOf<GroundParams> = {
  'ground-empty': () => [
    'The street file is empty.',
    'It should be OpenStreetMap data as .osm, .osm.gz, .osm.pbf or GeoJSON.',
    SAVE_AGAIN,
  ],
  'ground-foreign': (params, say) => {
    const should = 'It should be OpenStreetMap data as .osm, .osm.gz, .osm.pbf or GeoJSON.';
    if (params.kind === 'text') return [`The file begins with ${say.quote(params.found)}.`, should, SAVE_AGAIN];
    if (params.kind === 'html')
      return ['This is a web page (HTML), not a street file.', should, 'The download may have led to an error page.'];
    return params.kind === 'zip'
      ? ['This is a ZIP file.', should, 'Unpack it and use the street file inside.']
      : params.kind === 'nul'
        ? ['The file has a NUL byte: it is binary, or was not written to its end.', should, SAVE_AGAIN]
        : ['This is a file of an unknown kind.', should, SAVE_AGAIN];
  },
  'ground-root': (params, say) => {
    if ('missing' in params)
      return ['This GeoJSON has no list of features.', null, 'Save the streets as a collection of features.'];
    return 'root' in params
      ? [`The outermost element is <${params.root}>.`, 'It should be <osm>.', 'Save the streets as OpenStreetMap XML.']
      : [
          `The type of this GeoJSON is ${say.found(params.type)}.`,
          'It should be “FeatureCollection”.',
          'Save the streets as a collection of features.',
        ];
  },
  'ground-cut-off': ({ format }) => [
    `The file ends in the middle of ${FORMATS[format]}: it was cut off.`,
    null,
    'Download or save it again.',
  ],
  'ground-broken': ({ format }) => [
    `A part of ${FORMATS[format]} cannot be read: the file is damaged.`,
    null,
    'Download or save it again.',
  ],
  'ground-json': ({ found }, say) => [`The JSON breaks at ${say.quote(found)}.`, null, SAVE_AGAIN],
  'ground-malformed': ({ fault, name }) => {
    if (fault === 'secondRoot')
      return ['A second outermost element follows the end of <osm>.', null, 'Use one street file at a time.'];
    if (fault === 'doctype')
      return ['The file has a <!DOCTYPE>, which OpenStreetMap data do not need.', null, 'Delete it.'];
    if (fault === 'other') return ['The text is not well-formed XML here.', null, SAVE_AGAIN];
    return XML[fault](name);
  },
  'ground-encoding': (params, say) => gpx['gpx-encoding'](params, say),
  'ground-pbf-feature': ({ feature }, say) => [
    `This PBF file needs a reader that knows ${say.quote(feature)}.`,
    'It should be plain OpenStreetMap data, without history.',
    'Save a current extract.',
  ],
  'ground-limit': ({ bound, most }, say) => [BOUNDS[bound](say.count(most)), null, SMALLER],
  'ground-element': (params, say) => {
    if ('more' in params)
      return [`${say.count(params.more)} more are left out likewise; there are ${say.count(params.all)} in all.`];
    const found = say.found(params.found);
    switch (params.problem) {
      case 'position':
        return [
          `A position is ${found}.`,
          'It should be [longitude, latitude] in degrees.',
          'The feature is left out.',
        ];
      case 'geometry':
        return [
          `The geometry is ${found}.`,
          'It should be a point, a line or a polygon with coordinates.',
          'The feature is left out.',
        ];
      case 'feature':
        return [`This is ${found}.`, 'It should be a feature.', 'It is left out.'];
      case 'nodes':
        return [`The nodes are ${found}.`, 'They should be one for each position.', 'The feature is left out.'];
      case 'id':
        return [
          `The id of this <${params.element}> is ${found}.`,
          `It should be a whole number up to ${say.count(params.most)}.`,
          'The element is left out.',
        ];
      default:
        return [
          `The ${params.problem} of this <${params.element}> is ${found}.`,
          `It should be a number from -${params.problem === 'latitude' ? '90 to 90' : '180 to 180'}.`,
          'The element is left out.',
        ];
    }
  },
  'ground-nothing': ({ read, within }, say) => [
    `Of ${say.count(read)} elements of the street file, none lies within ${say.length(within)} of a course.`,
    null,
    'Save an extract that covers the courses.',
  ],
  'ground-no-course': () => [
    'The plan has no course that could be read.',
    null,
    'Clip the street file when it has one.',
  ],
};
