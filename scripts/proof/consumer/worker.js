import { figuresOf } from './figures.js';

self.addEventListener('message', ({ data: { plan, files } }) => self.postMessage(figuresOf(plan, files), []));
