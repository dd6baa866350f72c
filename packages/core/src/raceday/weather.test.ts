import { expect, it } from 'vitest';
import { planOf } from '../testing/plans.ts';
import { weatherFindings } from './weather.ts';

it('notes the level of the hottest hour with who decides, warns at the level at which races are stopped, and notes a wind', () => {
  const plan = { ...planOf({}), weather: [{ at: 28_800, wbgtC: 24, windKmh: 45 }] };
  const [level, wind] = weatherFindings(plan);
  expect(level).toMatchObject({
    code: 'weather-level',
    severity: 'note',
    where: { path: '/weather/0' },
    measured: 24,
    unit: '°C',
  });
  expect(level!.source).toContain('as quoted by Road Race Management');
  expect(level!.message).toBe(
    'WBGT 24 °C is expected at 08:00, level red for road races. The medical director decides what follows, up to stopping the race. Order ice, sponges and shade and a second delivery of drinks, and tell runners before the start to slow down.',
  );
  expect(wind).toMatchObject({ code: 'weather-wind', severity: 'note', measured: 45, limit: 30 });
  expect(weatherFindings({ ...plan, weather: [{ at: 0, wbgtC: 29 }] })).toMatchObject([{ severity: 'warning' }]);
  expect(weatherFindings(planOf({}))).toEqual([]);
});
