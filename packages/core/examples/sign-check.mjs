/**
 * Fails a build where an advance sign stands too near its tables, or too far: node sign-check.mjs PLAN.json…
 * Exit 0: every sign stands well; 1: one does not; 2: a file cannot be used. What the plan has waived is left out.
 */
import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { filesNamedBy, findingLine, readPlan, reviewPlan } from '@halfcup/core';

const isSigns = ({ code, where }) => code === 'sign-distance' || (code === 'item-outside' && where.item === 'sign');

/** Findings about the signs of one plan, each with its file, line and column. */
async function signFindings(file) {
  const plan = readPlan(await readFile(file, 'utf8'), file);
  if (!plan.ok) return plan;
  const files = new Map();
  for (const name of filesNamedBy(plan.value.plan).gpx) files.set(name, await readFile(join(dirname(file), name)));
  const { ok, findings } = reviewPlan({ plan: plan.value, files });
  return ok ? { ok, value: findings.filter((one) => isSigns(one) && one.waived === undefined) } : { ok, findings };
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
