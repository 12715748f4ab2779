import { compiled } from '../store/children.js';

/**
 * The program of a process that tells, writes and sends messages of a folder to a mail server on loopback: `lines` of
 * it find `group`, `outbox`, `messages` and `post` at hand, and the folder open.
 */
export const life = (folder: string, port: number, lines: string): string => `
  import { openOwnGroup } from ${JSON.stringify(compiled('group/index.js'))};
  import { Messages, Post, Recipients, sendEmail } from ${JSON.stringify(compiled('messages/index.js'))};
  const group = await openOwnGroup(${JSON.stringify(folder)});
  const { outbox } = group;
  const recipients = new Recipients(group.folder);
  const failed = (error) => { throw error; };
  const messages = new Messages({ group, outbox, recipients, sources: [], mailbox: false, failed,
    base: () => 'https://eggs.example.org', sign: (text) => Buffer.from(text).toString('hex'), domain: 'eggs.example.org' });
  const server = { host: '127.0.0.1', port: ${port}, security: 'none', user: null, password: null,
    from: 'underice@eggs.example.org', seconds: 5 };
  const post = new Post({ outbox, recipients, hours: 72, failed, ways: { webhook: failed,
    email: ({ name, email }, letter) => sendEmail(server, { name, email, group: 'Tallowmere' }, letter) } });
  ${lines}
  await group.close();
`;
