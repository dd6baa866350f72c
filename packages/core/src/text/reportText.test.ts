/** Words of the safety report where figures are one, none or missing: they go to offices that sign it. */
import { describe, expect, it } from 'vitest';
import { en } from './en.ts';
import { es } from './es.ts';
import type { Counted } from './reportText.ts';

const NONE: Counted = { error: 0, warning: 0, note: 0, waived: 0, cannotTell: 0, notRun: 0 };
const [english, spanish] = [en.report, es.report];

describe('the report', () => {
  it('says what the review comes to: errors before warnings, one or several', () => {
    const verdicts = (keys: Partial<Counted>): string[] =>
      [english, spanish].map(({ verdict }) => verdict({ ...NONE, ...keys }));
    expect(verdicts({ error: 1, warning: 3 })).toEqual([
      'Not ready to sign: 1 error must be corrected, or accepted by a named person.',
      'No se puede firmar aún: hay que corregir 1 error, o aceptarlo con nombre.',
    ]);
    expect(verdicts({ error: 2 })).toEqual([
      'Not ready to sign: 2 errors must be corrected, or accepted by a named person.',
      'No se puede firmar aún: hay que corregir 2 errores, o aceptarlos con nombre.',
    ]);
    expect(verdicts({ warning: 1 })).toEqual([
      'No errors. 1 warning needs your judgement.',
      'Sin errores. 1 aviso queda a su criterio.',
    ]);
    expect(verdicts({ warning: 2, note: 1 })).toEqual([
      'No errors. 2 warnings need your judgement.',
      'Sin errores. 2 avisos quedan a su criterio.',
    ]);
    expect(verdicts({ note: 4 })).toEqual(['No errors and no warnings.', 'Sin errores ni avisos.']);
  });

  it('tells what is unclear and what could not run only where there is some', () => {
    expect([english, spanish].map(({ result }) => result(NONE))).toEqual([
      '0 errors, 0 warnings, 0 notes; 0 waived',
      '0 errores, 0 avisos, 0 notas; 0 aceptados',
    ]);
    const counts = { error: 1, warning: 1, note: 1, waived: 1, cannotTell: 1, notRun: 1 };
    expect([english, spanish].map(({ result }) => result(counts))).toEqual([
      '1 error, 1 warning, 1 note; 1 waived; 1 of them unclear; 1 check could not run',
      '1 error, 1 aviso, 1 nota; 1 aceptado; 1 de ellos sin determinar; 1 comprobación no pudo hacerse',
    ]);
    expect(spanish.result({ ...counts, notRun: 2 })).toContain('2 comprobaciones no pudieron hacerse');
  });

  it('asks about one finding or several', () => {
    const asked = (key: 'findings' | 'waived' | 'notRun', count: number): string[] =>
      [english, spanish].map(({ decide }) => decide[key](count));
    expect(asked('findings', 1)).toEqual([
      'May this finding stand, or must the plan change?',
      '¿Puede este hallazgo quedar así, o debe cambiar el plan?',
    ]);
    expect(asked('findings', 2)).toEqual([
      'May these 2 findings stand, or must the plan change?',
      '¿Pueden estos 2 hallazgos quedar así, o debe cambiar el plan?',
    ]);
    expect(asked('waived', 1)).toEqual([
      'Do you accept the finding that others have waived?',
      '¿Admite el hallazgo que otros han aceptado?',
    ]);
    expect(asked('waived', 3)).toEqual([
      'Do you accept the 3 findings that others have waived?',
      '¿Admite los 3 hallazgos que otros han aceptado?',
    ]);
    expect(asked('notRun', 1).map((text) => text.split('?')[0])).toEqual([
      'May the point that could not be checked stay open',
      '¿Puede quedar abierto el punto que no pudo comprobarse',
    ]);
    expect(asked('notRun', 2).map((text) => text.split('?')[0])).toEqual([
      'May the 2 points that could not be checked stay open',
      '¿Pueden quedar abiertos los 2 puntos que no pudieron comprobarse',
    ]);
  });

  it('says of a race when it starts, or that the plan does not', () => {
    const race = (starts: readonly string[]): string[] =>
      [english, spanish].map((words) => words.race({ length: '10 km', starts, entrants: null, cutoff: null }));
    expect(race([])).toEqual(['10 km, start times not stated', '10 km, salidas sin indicar']);
    expect(race(['08:00'])).toEqual(['10 km, starts 08:00', '10 km, salida 08:00']);
    expect(race(['08:00', '08:10', '08:20'])).toEqual([
      '10 km, starts 08:00, 08:10 and 08:20',
      '10 km, salidas 08:00, 08:10 y 08:20',
    ]);
  });

  it('says on which side tables stand, by whom it is said, and whether the position agrees', () => {
    const sides = (declared: 'left' | null, computed: 'left' | 'right' | null): string[] =>
      [en, es].map(({ frame, report: { stations } }) =>
        stations.sideWords(declared && frame[declared], computed && frame[computed]),
      );
    expect(sides('left', 'left')).toEqual([
      'Tables on the left, as declared',
      'Mesas a la izquierda, según lo declarado',
    ]);
    expect(sides('left', 'right')).toEqual([
      'Tables on the left, as declared; by the position: right',
      'Mesas a la izquierda, según lo declarado; por la posición: derecha',
    ]);
    expect(sides('left', null)).toEqual([
      'Tables on the left, as declared; the position does not bear it out, so check on site',
      'Mesas a la izquierda, según lo declarado; la posición no lo confirma: compruébese en el lugar',
    ]);
    expect(sides(null, 'right')).toEqual([
      'Side of the tables not declared; by the position: right',
      'Lado de las mesas sin declarar; por la posición: derecha',
    ]);
    expect(sides(null, null)).toEqual([
      'Side of the tables not declared; the position does not tell it either',
      'Lado de las mesas sin declarar; la posición tampoco lo dice',
    ]);
  });

  it('says who has walked a place, with the day if it is known', () => {
    const walked = (date: string): string[] =>
      [english, spanish].map(({ stations }) => stations.walked('Ada Kelp', date));
    expect(walked('')).toEqual(['Walked by Ada Kelp', 'Recorrido a pie por Ada Kelp']);
    expect(walked('2027-08-01')).toEqual([
      'Walked by Ada Kelp, 2027-08-01',
      'Recorrido a pie por Ada Kelp, 2027-08-01',
    ]);
  });

  it('writes how far the zone is ahead of UTC in hours and minutes, as clocks have it', () => {
    // Offsets of Asia/Kolkata, Asia/Kathmandu, America/St_Johns in winter, and Etc/UTC. Source: tz database.
    expect([2, 5.5, 5.75, -3.5, -10, 0].map((ahead) => english.local(ahead))).toEqual([
      'local time, UTC+2',
      'local time, UTC+5:30',
      'local time, UTC+5:45',
      'local time, UTC−3:30',
      'local time, UTC−10',
      'local time, UTC+0',
    ]);
    expect(spanish.local(9.5)).toBe('hora local, UTC+9:30');
  });
});
