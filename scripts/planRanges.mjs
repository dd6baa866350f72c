/** The table of a plan's numbers with their ranges, from the JSON Schema that the library publishes. */

const UNITS = [
  ['km|', 'm'],
  ['s|min|h', 's'],
  ['l|ml', 'l'],
  ['kg|lb', 'kg'],
];

/** What a number is that may be written as a text with its unit too. */
function quantityOf({ anyOf }) {
  const [number, text] = anyOf ?? [];
  const unit = UNITS.find(([sign]) => text?.pattern?.includes(sign))?.[1];
  return number?.type === 'number' && unit !== undefined ? { number, unit } : null;
}

/** Rules that a station may have of its own are those of the plan, and a variant’s keys those of a station. */
const isRepeated = (name) =>
  /^stations\[\]\.(practice|supplies|crew)\.|^variants\[\]\.stations|^races\[\]\.waves\[\]\.finish/u.test(name);

function* numbersOf(node, name = '') {
  const quantity = quantityOf(node);
  if (isRepeated(name) || node.const !== undefined) return;
  if (quantity !== null || node.type === 'number' || node.type === 'integer') {
    const { minimum, maximum } = quantity?.number ?? node;
    yield { name, minimum, maximum, unit: quantity?.unit ?? '' };
    return;
  }
  for (const form of node.anyOf ?? []) yield* numbersOf(form, name);
  for (const [key, inner] of Object.entries(node.properties ?? {}))
    yield* numbersOf(inner, name === '' ? key : `${name}.${key}`);
  for (const [place, inner] of (node.prefixItems ?? []).entries()) yield* numbersOf(inner, `${name}[${place}]`);
  if (typeof node.items === 'object') yield* numbersOf(node.items, `${name}[]`);
  if (typeof node.additionalProperties === 'object') yield* numbersOf(node.additionalProperties, `${name}.*`);
}

/** Lines of a Markdown table. */
export function rangeTable(schema) {
  const number = (value) => value.toLocaleString('en', { maximumSignificantDigits: 15 });
  const rows = [...numbersOf(schema)].map(
    ({ name, minimum, maximum, unit }) => `| \`${name}\` | ${number(minimum)} | ${number(maximum)} | ${unit} |`,
  );
  return ['| key | from | to | unit |', '|---|--:|--:|---|', ...rows].join('\n');
}
