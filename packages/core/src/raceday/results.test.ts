import * as fc from 'fast-check';
import { describe, expect, it, test, vi } from 'vitest';
import { findingLine, type Result } from '../finding.ts';
import { readDelimited } from '../delimited.ts';
import { LIMITS } from '../limits.ts';
import { readFinish } from './readFinish.ts';
import { type PastTimes, readResults } from './results.ts';
import { tries } from '../testing/tries.ts';

const read = (text: string, column = 'net'): Result<PastTimes> => readResults(text, column, 'results.csv');
const timesOf = (text: string, column?: string): number[] => {
  const result = read(text, column);
  if (!result.ok) throw new Error(result.findings.map(findingLine).join('; '));
  return result.value.times;
};
const said = (text: string, column?: string): string[] => {
  const result = read(text, column);
  if (result.ok) throw new Error('expected findings');
  return result.findings.map(findingLine);
};

describe('a finish time', () => {
  test.each([
    ['3:59:10', 14_350],
    ['03:59:10', 14_350],
    ['59:10', 3550],
    ['75:30', 4530],
    ['14350', 14_350],
    ['14350.5', 14_350.5],
    ['3:59:10.25', 14_350.25],
    ['3:59:10,5', 14_350.5],
    [' 1:00:00 ', 3600],
    ['26:00:00', 93_600],
  ])('%j is %d s', (text, seconds) => {
    expect(readFinish(text)).toBe(seconds);
  });

  test.each([[''], ['  '], ['DNF'], ['dns'], ['DSQ'], ['DQ'], ['-'], ['–'], ['NT']])('%j is none', (text) => {
    expect(readFinish(text)).toBeNull();
  });

  test.each([
    ['3:59:60'],
    ['3:60:00'],
    ['0'],
    ['0:00:00'],
    ['-5'],
    ['1,234'],
    ['4h'],
    ['3:5:9'],
    ['abc'],
    ['1:2:3:4'],
    ['NaN'],
    ['1e3'],
    ['Infinity'],
  ])('%j cannot be read', (text) => {
    expect(readFinish(text)).toBeUndefined();
  });
});

describe('past results', () => {
  it('are read with comma, semicolon or tab, with LF, CRLF or CR, with a byte order mark', () => {
    for (const delimiter of [',', ';', '\t']) {
      for (const end of ['\n', '\r\n', '\r']) {
        for (const mark of ['', '\uFEFF']) {
          const lines = [
            ['place', 'net', 'name'],
            ['1', '2:10:00', '"a, b; c"'],
            ['2', '2:20:00', 'd'],
          ].map((line) => line.join(delimiter));
          expect(timesOf(mark + lines.join(end) + end)).toEqual([7800, 8400]);
        }
      }
    }
  });

  it('have their column by name, whatever its case and blanks', () => {
    expect(timesOf('Gun , NET \n1:00:00,59:00\n', 'net')).toEqual([3540]);
    expect(timesOf('"Net"\n3600\n', ' nET ')).toEqual([3600]);
  });

  // RFC 4180, section 2, rules 5 to 7.
  it('may have line ends, delimiters and doubled quotes inside quotes', () => {
    expect(timesOf('name,net\r\n"a ""b""\r\nc, d",1:00:00\r\n"",2:00:00')).toEqual([3600, 7200]);
  });

  it('leave out who has no finish, and a note says how many', () => {
    const result = read('net\n1:00:00\nDNF\nDNS\n""\n2:00:00\n');
    expect(result).toMatchObject({
      ok: true,
      value: { times: [3600, 7200], leftOut: 3 },
      findings: [{ code: 'results-left-out', severity: 'note', where: { file: 'results.csv' } }],
    });
    expect(result.findings[0]!.message).toContain('3 of 5 rows');
    expect(read('net\n1:00:00\n').findings).toEqual([]);
  });

  it('that cannot be read are reported with their place, all of them', () => {
    const lines = said('place,net\n1,1:00:00\n2,fast\n3,1:99:00\n');
    expect(lines[0]).toMatch(
      /^results\.csv:3:3: “fast” is not a finish time\. It should be a time .*H:MM:SS, MM:SS or seconds/u,
    );
    expect(lines[1]).toMatch(/^results\.csv:4:3: “1:99:00” is not a finish time/u);
    expect(lines).toHaveLength(2);
  });

  it('keep their places behind a quoted line end and a byte order mark', () => {
    expect(said('\uFEFFnet\nfast\n')[0]).toMatch(/^results\.csv:2:1: /u);
    expect(said('name,net\n"a\nb",fast\n')[0]).toMatch(/^results\.csv:3:4: “fast”/u);
  });

  it('report the first twenty faults and count the others', () => {
    const lines = said(`net\n${'fast\n'.repeat(30)}`);
    expect(lines).toHaveLength(21);
    expect(lines[20]).toBe('results.csv:22:1: 10 more rows from here on cannot be read.');
  });

  it('say one row and one field in the singular, more in the plural', () => {
    const left = (text: string): string => {
      const result = read(text);
      expect(result.ok).toBe(true);
      return findingLine(result.findings[0]!);
    };
    expect(left('net\n1:00:00\nDNF\n')).toContain(
      '1 of 2 rows has no finish time in column “net” and is left out (DNF, DNS or empty).',
    );
    expect(left('net\n1:00:00\nDNF\nDNS\n')).toContain(
      '2 of 3 rows have no finish time in column “net” and are left out (DNF, DNS or empty).',
    );
    expect(said('a,b,net\n1,2,1:00:00\n1\n')[0]).toContain(
      'The row has 1 field, and the header 3: the time is missing.',
    );
    expect(said('a,b,net\n1,2,1:00:00\n1,2\n')[0]).toContain(
      'The row has 2 fields, and the header 3: the time is missing.',
    );
  });

  it('with a header of very many columns list twelve and count the others', () => {
    const [line] = said(`${Array.from({ length: 200 }, (_, k) => `column ${k}`).join(',')}\n`, 'net');
    expect(line).toMatch(/The header has “column 0”, “column 1”, .*“column 11” and 188 more\.$/u);
    expect(line!.length).toBeLessThan(600);
  });

  it('without the column list those there are', () => {
    expect(said('place;gun;chip\n1;2;3\n')).toEqual([
      'results.csv:1:1: There is no column “net”. The header has “place”, “gun” and “chip”.',
    ]);
    expect(said('net,Net\n1,2\n')[0]).toMatch(/^results\.csv:1:5: 2 columns are named “net”\./u);
  });

  it('with a delimiter outside quotes, which would shift the column, are refused', () => {
    expect(said('name,net\na, b,1:00:00\n')[0]).toMatch(/^results\.csv:2:6: The row has 3 fields, and the header 2\./u);
    expect(said('name,net\na\n')[0]).toMatch(/^results\.csv:2:1: The row has 1 field, and the header 2/u);
    expect(timesOf('name,net\na,1:00:00,,\n')).toEqual([3600]);
  });

  it.each([
    ['', 'results.csv: The file is empty.'],
    ['\uFEFF\n\n', 'results.csv: The file is empty.'],
    ['net\n', 'no finish time in 0 rows'],
    ['net\nDNF\n', 'no finish time in 1 row.'],
    ['name,net\n"a,1:00:00\n', 'results.csv:2:1: A quote is never closed.'],
    ['name,net\n"a"b,1:00:00\n', 'results.csv:2:4: Text follows a closing quote.'],
  ])('of %j say what is wrong', (text, words) => {
    expect(said(text)[0]).toContain(words);
  });

  it('written by RFC 4180 give back every field, and any text an answer', () => {
    const runs = { seed: 20_270_912, numRuns: tries(300) };
    const table = fc.integer({ min: 1, max: 4 }).chain((width) =>
      fc.array(
        fc.array(fc.string({ unit: fc.constantFrom('a', '"', ',', ';', '\n', '\r', '\t', ' ', '\uFEFF') }), {
          minLength: width,
          maxLength: width,
        }),
        { minLength: 1, maxLength: 5 },
      ),
    );
    fc.assert(
      fc.property(table, (rows) => {
        const lines = [rows[0]!.map((_, k) => `c${k}`), ...rows];
        const text = lines.map((row) => row.map((field) => `"${field.replaceAll('"', '""')}"`).join(',')).join('\r\n');
        expect(readDelimited(text).records.map((row) => row.map((cell) => cell.text))).toEqual(lines);
      }),
      runs,
    );
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom('n', 'e', 't', '"', ',', ';', '\n', '\r', '\t', '1', ':', '\uFEFF') }),
        (text) => {
          const result = read(text);
          expect(result.ok ? result.value.times.every((time) => time > 0) : result.findings.length > 0).toBe(true);
        },
      ),
      runs,
    );
  });
});

describe('a results file that is odd', () => {
  const MOST = LIMITS.results.characters;

  it.each([
    ['quotes alone', '"'],
    ['letters alone', 'x'],
    ['letters and doubled quotes', 'x""'],
  ])('is read no further than a cell may be long: %s', (_title, unit) => {
    const from = unit.startsWith('"') ? '' : '"';
    for (const head of ['', 'net,note\n1:00:00,']) {
      const text = head + from + unit.repeat(4 * MOST);
      const search = vi.spyOn(String.prototype, 'indexOf');
      const { findings } = readResults(text, 'net', 'r.csv');
      const asked = search.mock.calls.map(([, at]) => at ?? 0);
      search.mockRestore();
      if (unit === 'x') expect(findings.map(({ code }) => code)).toEqual(['results-unread']);
      else
        expect(findings.map(({ code, where }) => [code, where.line, where.column])).toEqual([
          ['past-limit', head === '' ? 1 : 2, head === '' ? 1 : 9],
        ]);
      expect(Math.max(...asked)).toBeLessThan(MOST + 100);
    }
  });

  it('has its delimiter by the beginning of a header without end', () => {
    const { delimiter, past } = readDelimited(`a;b${','.repeat(3 * MOST)}`);
    expect([delimiter, past?.what]).toEqual([',', 'columns']);
    expect(readDelimited('a'.repeat(MOST)).past).toBeNull();
    expect(readDelimited('a'.repeat(MOST + 1)).past).toEqual({ what: 'characters', line: 1, column: 1 });
  });
});
