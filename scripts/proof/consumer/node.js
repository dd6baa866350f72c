/** Prints the figures of a folder with a plan, as JSON. */
import { readFileSync } from 'node:fs';
import { figuresOf } from './figures.js';

const [folder] = process.argv.slice(2);
const files = Object.fromEntries(
  ['full.gpx', 'half.gpx'].map((name) => [name, new Uint8Array(readFileSync(`${folder}/${name}`))]),
);
console.log(
  JSON.stringify({ node: process.version, figures: figuresOf(readFileSync(`${folder}/plan.json`, 'utf8'), files) }),
);
