// Talks with the server.

// The server has ended, cannot be reached, or is another one that this page is not let into.
export class Gone extends Error {}

async function reach(path, options) {
  try {
    const answer = await fetch(path, options);
    if (answer.status !== 403) {
      return { status: answer.status, body: await answer.json() };
    }
  } catch {
    // No answer, or one that broke off.
  }
  throw new Gone('The review has ended. Start it again; your text stays here.');
}

export async function ask(path) {
  const { status, body } = await reach(path);
  if (status !== 200) {
    throw new Error(`${body.error}. ${body.hint}`);
  }
  return body;
}

export function tell(path, fields) {
  return reach(path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(fields) });
}
