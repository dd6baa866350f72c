/**
 * Fails a build where an advance sign stands too near its tables, or too far: node sign-check.mjs PLAN.json…
 * Exit 0: every sign stands well; 1: one does not; 2: a file cannot be used. What the plan has waived is left out.
 */
import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { analyse, filesNamedBy, findingLine, placeFindings, readPlan } from '@halfcup/core';
import { readGpx } from '@halfcup/core/gpx';

/** Findings about the signs of one plan, each with its file, line and column. */
async function signFindings(file) {
  const read = readPlan(await readFile(file, 'utf8'), file);
  if (!read.ok) return read;
  const gpx = new Map();
  for (const name of filesNamedBy(read.value.plan).gpx) {
    const line = readGpx(await readFile(join(dirname(file), name)), join(dirname(file), name));
    if (!line.ok) return line;
    gpx.set(name, line.value);
  }
  const analysis = analyse(read.value.plan, { gpx });
  if (!analysis.ok) return { ok: false, findings: placeFindings(analysis.findings, read.value) };
  const isSigns = ({ code, where }) => code === 'sign-distance' || (code === 'item-outside' && where.item === 'sign');
  return {
    ok: true,
    value: placeFindings(analysis.value.findings, read.value).filter(
      (finding) => isSigns(finding) && finding.waived === undefined,
    ),
  };
}

const files = process.argv.slice(2);
if (files.length === 0) console.error('sign-check: found no plan; expected node sign-check.mjs PLAN.json…');
process.exitCode = files.length === 0 ? 2 : 0;

for (const file of files) {
  const result = await signFindings(file).catch(({ path, message }) => ({
    ok: false,
    findings: [{ message: `cannot be read: ${message}`, where: { file: path ?? file } }],
  }));
  if (!result.ok) {
    console.error(result.findings.map(findingLine).join('\n'));
    process.exitCode = 2;
    continue;
  }
  for (const finding of result.value) {
    const [least, most] = finding.limit.map((metres) => metres.toFixed(1));
    console.log(
      `${findingLine(finding)} [${finding.code}: measured ${finding.measured.toFixed(1)} m, limit ${least} to ${most} m]`,
    );
  }
  if (result.value.length > 0 && process.exitCode === 0) process.exitCode = 1;
}
