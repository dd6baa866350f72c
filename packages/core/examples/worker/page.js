/** Asks the worker and shows what it says. Answers carry the number of their question: a slow one never takes another's place. */
import { table } from '../notebook/show.js';

const worker = new Worker(new URL('snap.worker.js', import.meta.url), { type: 'module' });
const waiting = new Map();
worker.addEventListener('message', ({ data }) => {
  waiting.get(data.id)?.(data);
  waiting.delete(data.id);
});

let asked = 0;
/** All passes of the course by a position, or the problem in words. */
const snap = (at) =>
  new Promise((resolve) => {
    asked += 1;
    waiting.set(asked, resolve);
    worker.postMessage({ id: asked, at }, []);
  });

const form = document.querySelector('form');
const output = document.querySelector('output');

form.addEventListener('submit', async (event) => {
  event.preventDefault();
  const question = form.position.value;
  const { id, passes, problem } = await snap(
    question.split(',').map((part) => (part.trim() === '' ? NaN : Number(part))),
  );
  if (id !== asked) return;
  if (problem !== undefined)
    return output.replaceChildren(
      Object.assign(document.createElement('p'), { className: 'problem', textContent: problem }),
    );
  if (passes.length === 0) return output.replaceChildren('The course does not come within 60 m of it.');
  const rows = passes.map(({ measure, side, confidence, distance }) => [
    (measure / 1000).toFixed(3),
    side,
    `${Math.floor(confidence * 100)} %`,
    distance.toFixed(1),
  ]);
  output.replaceChildren(
    table(`Passes by ${question.trim()}, in running order`, [' At, km', 'Side', ' Sure', ' Off, m'], rows),
  );
});
