/** The worker that searches for better places and reports how far it is. It is stopped by being ended. */
import '../policy.ts';
import { improve } from '@halfcup/core';
import { analyseOn } from '@halfcup/core/stages';
import { indexCourse } from '@halfcup/core/geometry';
import { reasonOf } from '../trouble.ts';
import type { ImproveTask, ImproveTold } from './improveMessages.ts';

const post = (told: ImproveTold): void => self.postMessage(told, {});

function search({ plan, courses, courseFindings, results, ground, only, within }: ImproveTask): ImproveTold {
  const analysis = analyseOn({ ok: true, value: courses.map(indexCourse), findings: courseFindings }, plan, {
    gpx: new Map(),
    results,
    ground,
  });
  if (!analysis.ok)
    return {
      kind: 'failed',
      message: (analysis.findings[0]?.message ?? 'the plan cannot be computed').replace(/\.$/u, ''),
    };
  const {
    analysis: _,
    plan: better,
    ...rest
  } = improve(analysis.value, { only, within, onProgress: (share) => post({ kind: 'progress', share }) });
  return { kind: 'improved', improvement: { ...rest, stations: better.stations } };
}

self.addEventListener('message', ({ data }: MessageEvent<ImproveTask>) => {
  try {
    post(search(data));
  } catch (error) {
    post({ kind: 'failed', message: reasonOf(error) });
  }
});
