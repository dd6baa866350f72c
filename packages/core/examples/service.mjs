/** Reviews plans over HTTP: node service.mjs [PORT]. POST /review takes { "plan": …, "files": { "full.gpx": "<gpx …" } }. */
import { createServer } from 'node:http';
import { reviewPlan } from '@halfcup/core';
import { findingDocument } from '@halfcup/core/schemas';

const MOST = 20_000_000;
const refusal = (status, message) => Object.assign(new Error(message), { status });

async function bodyOf(request) {
  const chunks = [];
  let size = 0;
  for await (const chunk of request) {
    size += chunk.length;
    if (size > MOST) throw refusal(413, `The body is over ${MOST} bytes.`);
    chunks.push(chunk);
  }
  try {
    return JSON.parse(Buffer.concat(chunks).toString('utf8'));
  } catch {
    throw refusal(400, 'The body is not JSON.');
  }
}

async function answer(request) {
  const { method, url } = request;
  if (url !== '/review') throw refusal(404, 'There is only /review here.');
  if (method !== 'POST') throw refusal(405, 'Send a plan by POST.');
  const { plan, files } = (await bodyOf(request)) ?? {};
  const texts = Object.entries(files ?? {});
  if (texts.some(([, text]) => typeof text !== 'string')) throw refusal(400, 'A file is not a text.');
  const { ok, findings } = reviewPlan({ plan, files: new Map(texts) });
  return { status: ok ? 200 : 422, body: { [ok ? 'findings' : 'problems']: findings.map(findingDocument) } };
}

const server = createServer(async (request, response) => {
  const told = ({ status = 500, message }) => ({ status, body: { problems: [{ message }] } });
  const { status, body } = await answer(request).catch(told);
  response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body));
});
server.listen(Number(process.argv[2] ?? 8080), '127.0.0.1', () => console.log(server.address().port));
