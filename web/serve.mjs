// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A small server for one folder, on this machine only. Usage: node serve.mjs FOLDER [PORT]; with the port taken, it finds
// a free one. Ctrl-C stops it. Tests call startServer().
import { createReadStream } from 'node:fs';
import { realpath, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import { headerPolicy } from './policy.mjs';

const kHost = '127.0.0.1';
const kTypes = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.wasm': 'application/wasm',
  '.otf': 'font/otf',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
};
const kHeaders = {
  'Content-Security-Policy': headerPolicy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cache-Control': 'no-cache',
};

/** The file asked for, or null when there is none inside the folder. */
async function findFile(folder, url) {
  let path;
  try {
    path = decodeURIComponent(new URL(url, `http://${kHost}`).pathname);
  } catch {
    return null;
  }
  if (path.includes('\0')) return null;
  const wanted = join(folder, path.endsWith('/') ? `${path}index.html` : path);
  try {
    const file = await realpath(wanted);  // a link that leads out of the folder is refused too
    if (!file.startsWith(folder + sep) || !(await stat(file)).isFile()) return null;
    return file;
  } catch {
    return null;
  }
}

async function answer(folder, request, response) {
  const refuse = (status, text) => {
    response.writeHead(status, { ...kHeaders, 'Content-Type': 'text/plain; charset=utf-8' });
    response.end(request.method === 'HEAD' ? undefined : `${text}\n`);
  };
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405, 'only GET and HEAD');
  const file = await findFile(folder, request.url);
  if (!file) return refuse(404, 'not here');
  const { size } = await stat(file);
  response.writeHead(200, {
    ...kHeaders,
    'Content-Type': kTypes[extname(file)] ?? 'application/octet-stream',
    'Content-Length': size,
  });
  if (request.method === 'HEAD') return response.end();
  createReadStream(file).on('error', () => response.destroy()).pipe(response);
}

/** Serves `folder` at `port`, or at a free one when that is taken or 0. Resolves to {server, address}. */
export async function startServer(folder, port = 0) {
  const real = await realpath(folder);
  const server = createServer((request, response) => answer(real, request, response).catch(() => response.destroy()));
  const listen = (at) => new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(at, kHost, () => {
      server.off('error', reject);
      resolve();
    });
  });
  try {
    await listen(port);
  } catch (error) {
    if (error.code !== 'EADDRINUSE' && error.code !== 'EACCES') throw error;
    await listen(0);
  }
  return { server, address: `http://${kHost}:${server.address().port}/` };
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const [folder, port = '8417'] = process.argv.slice(2);
  const { server, address } = await startServer(folder, Number(port));
  console.log(`Tinwright is at ${address}\nPress Ctrl-C to stop.`);
  const stop = () => {
    server.close();
    server.closeAllConnections();
  };
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
}
