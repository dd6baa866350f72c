import { expect, it } from 'vitest';
import type { PlanVehicle } from '../plan/plan.ts';
import { strongEnough, vehicleFindings } from './vehicles.ts';

const van: PlanVehicle = { id: 'v', name: 'Van', kg: 1000, places: 6, kmh: 25, stop: 900, from: 0 };

it('a vehicle that needs more than ten trips to one station is told of, and not sent where another is', () => {
  const light = { ...van, id: 'l', name: 'Bike', kg: 19.9 };
  expect(vehicleFindings([van, { ...light, kg: 20 }], 200)).toEqual([]);
  expect(vehicleFindings([van, light], 200)).toMatchObject([
    {
      code: 'vehicle-doubtful',
      severity: 'warning',
      where: { path: '/vehicles/1/kg' },
      params: { trips: 11, used: false },
    },
  ]);
  expect(strongEnough([van, light], 200)).toEqual([van]);
  expect(vehicleFindings([light, light], 200)).toMatchObject([{ params: { used: true, count: 2 } }]);
  expect(strongEnough([light], 200)).toEqual([light]);
  expect(strongEnough([{ ...van, places: 0 }], 200)).toEqual([]);
});

it('a vehicle at more than 90 km/h is told of, once for all', () => {
  expect(vehicleFindings([{ ...van, kmh: 90 }], 200)).toEqual([]);
  expect(vehicleFindings([van, { ...van, kmh: 91 }, { ...van, kmh: 300 }], 200)).toMatchObject([
    { where: { path: '/vehicles/2/kmh' }, measured: 300, limit: 90, params: { problem: 'fast', count: 2 } },
  ]);
});
