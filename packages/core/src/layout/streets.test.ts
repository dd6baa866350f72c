import { describe, expect, it } from 'vitest';
import { analyse } from '../analyse.ts';
import { layoutDocument } from '../export/documents.ts';
import { toCsv } from '../export/csv.ts';
import { toGeoJson } from '../export/geojson.ts';
import { readPlan } from '../plan/read.ts';
import { reanalyse } from '../reanalyse.ts';
import { valueOf } from '../testing/courses.ts';
import { at, groundTown, townFiles, townPlan, townReview } from '../testing/planted/groundTown.ts';

const reviewed = (plant: (plan: ReturnType<typeof townPlan>) => void = () => undefined) => {
  const plan = townPlan();
  plant(plan);
  return townReview(plan, groundTown()).analysis;
};

describe('streets of a layout', () => {
  it('are those of the map: a street between its cross-streets, for the station and for each item', () => {
    const [first, second] = reviewed().stations;
    expect(first!.street).toEqual({ street: 'Harbour Road', after: 'Quay Street', before: 'Mill Lane', by: 'map' });
    expect(second!.street).toEqual({ street: 'Harbour Road', after: 'Mill Lane', before: 'Hill Street', by: 'map' });
    for (const { street } of first!.directions[0]!.items)
      expect(street).toEqual({ street: 'Harbour Road', after: 'Quay Street', before: 'Mill Lane' });
  });

  it('an item beyond a cross-street says so', () => {
    const [first] = reviewed(at(960)).stations;
    const [sign, ...rest] = first!.directions[0]!.items;
    expect(sign!.street).toEqual({ street: 'Harbour Road', after: 'Quay Street', before: 'Mill Lane' });
    expect(rest.at(-1)!.street).toEqual({ street: 'Harbour Road', after: 'Mill Lane', before: 'Hill Street' });
  });

  it('the plan’s own words stand before the map’s', () => {
    const [first] = reviewed(at(600, { street: 'Strand Road, by the pump' })).stations;
    expect(first!.street).toEqual({ street: 'Strand Road, by the pump', after: null, before: null, by: 'plan' });
  });

  it('without a map there are the plan’s words alone, and a blank is none', () => {
    const plan = townPlan();
    at(600, { street: 'Strand Road' })(plan);
    const [own, none] = townReview(plan, groundTown(), false).analysis.stations;
    expect([own!.street?.street, none!.street, own!.directions[0]!.items[0]!.street]).toEqual([
      'Strand Road',
      undefined,
      undefined,
    ]);
    at(600, { street: ' ' })(plan);
    expect(townReview(plan, groundTown(), false).analysis.stations[0]!.street).toBeUndefined();
  });

  it('stand in the document, in the table and in GeoJSON', () => {
    const analysis = reviewed();
    const [station] = layoutDocument(analysis, []).stations;
    expect(station!.street).toEqual(analysis.stations[0]!.street);
    expect(station!.directions[0]!.items[0]!.street).toEqual(analysis.stations[0]!.directions[0]!.items[0]!.street);
    const [header, sign] = toCsv(analysis).split('\r\n');
    expect(header).toMatch(/,street,after cross-street,before cross-street$/u);
    expect(sign).toMatch(/,Harbour Road,Quay Street,Mill Lane$/u);
    const features = toGeoJson(analysis).features.filter(({ properties }) => properties.station === 's1');
    const streets = features.map(({ properties: { kind, street, streetAfter, streetBefore } }) => [
      kind,
      street,
      streetAfter,
      streetBefore,
    ]);
    expect(streets[0]).toEqual(['station', 'Harbour Road', 'Quay Street', 'Mill Lane']);
    expect(streets.find(([kind]) => kind === 'trash')).toEqual(['trash', 'Harbour Road', 'Quay Street', 'Mill Lane']);
  });
});

describe('a change of a station', () => {
  const { text, ground } = townFiles(townPlan(), groundTown());
  const sources = { gpx: new Map(), ground: new Map([['ground.geojson', ground]]) };
  const { plan } = valueOf(readPlan(text, 'plan.json'));
  const before = valueOf(analyse(plan, sources));

  it('keeps what the map is along the courses, and gives what analysing anew gives', () => {
    const [first, second] = plan.stations;
    const changed = { ...plan, stations: [{ ...first!, on: { ...first!.on!, measure: 997 } }, second!] };
    const after = valueOf(reanalyse(before, changed, sources));
    expect(after.ground).toBe(before.ground);
    expect(after.stations[1]).toBe(before.stations[1]);
    const anew = valueOf(analyse(changed, sources));
    expect(after.findings).toEqual(anew.findings);
    expect(after.findings.some(({ code }) => code === 'item-in-mouth')).toBe(true);
    expect(after.stations).toEqual(anew.stations);
  });

  it('drops the map where the plan names it no more, and takes one that it names anew', () => {
    const { ground: _, ...without } = plan;
    const dropped = valueOf(reanalyse(before, without, sources));
    expect([dropped.ground, dropped.stations[0]!.street]).toEqual([undefined, undefined]);
    expect(dropped.findings).toEqual(valueOf(analyse(without, sources)).findings);
    const again = valueOf(reanalyse(dropped, plan, sources));
    expect(again.findings).toEqual(before.findings);
    expect(again.stations).toEqual(before.stations);
  });
});
