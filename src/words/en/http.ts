import type { HttpWords } from '../../http/words.js';
import type { Setting, SettingsWords } from '../../settings/index.js';
import { list, whole } from '../format.js';

const roleEn = (role: string) =>
  ({ coordinator: 'coordinator', crew: 'crew', reader: 'reader' })[role] ?? role;

export const http: { [Code in keyof HttpWords]: (words: HttpWords[Code]) => string } = {
  'http-not-found': ({ path }) => `There is nothing at ${path}.`,
  'http-no-method': ({ method, path }) => `${path} does not take ${method}.`,
  'http-failed': ({ reference }) =>
    `Something went wrong in the service, and nothing was stored by half. The log has it under ${reference}.`,
  'http-foreign-host': ({ host }) =>
    `This service does not answer to the name "${host}": open it at the address it printed, or state its address in the settings.`,
  'http-forged': () =>
    'This request did not come from a page of this service, or the page is too old: open the page again and repeat what you did.',
  'http-sign-in-first': () => 'Sign in first, or send an API token.',
  'http-token-not-known': () =>
    'This API token is not known or has ended: ask the coordinator for a new one.',
  'http-role': ({ role, needed }) =>
    `You are signed in as ${roleEn(role)}: this needs the role ${roleEn(needed)}. Ask your coordinator.`,
  'http-body-too-large': ({ kilobytes }) =>
    `More was sent than this takes: at most ${whole('en', kilobytes)} kB.`,
  'http-file-too-large': ({ megabytes }) =>
    `The file is larger than this service takes: at most ${whole('en', megabytes)} MB. A logger’s download is far smaller; send the original file, or one year at a time.`,
  'http-too-many-waiting': ({ files }) =>
    `${whole('en', files)} files are waiting already: accept or leave those first.`,
  'http-waiting-too-large': ({ megabytes }) =>
    `The files that wait to be accepted would take more than ${whole('en', megabytes)} MB: accept or leave those first.`,
  'http-too-many-files': ({ files }) =>
    `Too many files at once: at most ${whole('en', files)}. Send them in several goes.`,
  'http-too-many-fields': ({ fields }) => `The form has more than ${whole('en', fields)} fields.`,
  'http-not-a-form': () => 'The form did not arrive whole: open the page again and send it once more.',
  'http-not-json': () => 'What was sent is not JSON.',
  'http-one-layout': ({ files }) =>
    `A layout is kept of one file, and ${whole('en', files)} were sent: load the others without keepLayout.`,
  'http-not-these-values': ({ places }) =>
    `What was sent does not fit at ${list('en', places)}: /api/v1/openapi.json says what each takes.`,
  'http-not-this-type': ({ given, takes }) => `This does not take content of type "${given}": send ${takes}.`,
  'http-broken-off': () => 'The upload broke off: nothing of it was kept. Send it again.',
  'http-too-slow': ({ seconds }) =>
    `Nothing, or hardly anything, arrived for ${whole('en', seconds)} seconds: the request was given up. Send it again on a better connection.`,
  'http-unknown-file': ({ file }) =>
    `No file "${file}" is waiting: it was accepted, left, or thrown away after its time. Send it again.`,
  'http-archive-damaged': ({ file }) => `${file} is damaged or no zip archive: send the files inside it.`,
  'http-archive-too-large': ({ file, megabytes }) =>
    `${file} would unpack to more than ${whole('en', megabytes)} MB: send the files inside it that are downloads.`,
  'http-archive-too-many': ({ file, files }) =>
    `${file} holds more than ${whole('en', files)} files: send those that are downloads.`,
  'http-archive-locked': ({ file }) =>
    `${file} is locked with a password: unpack it and send what is inside.`,
  'http-archive-empty': ({ file }) => `${file} holds no file.`,
  'http-workbook-damaged': ({ file }) =>
    `${file} cannot be read as a workbook: save it as .xlsx or .csv and send that.`,
  'http-no-such-sheet': ({ file, sheet, sheets }) =>
    `${file} has no sheet "${sheet}": it has ${list('en', sheets)}.`,
  'http-if-match-missing': () =>
    'Say which version you changed: send If-Match with the ETag of the season you read.',
  'http-if-match-malformed': ({ given }) =>
    `If-Match was "${given}": send the ETag of the season you read, for example "season-3".`,
  'http-bad-cursor': () => 'This cursor is none of ours: begin again without one.',
  'http-wrong-password': () => 'The name or the password is wrong.',
  'http-slow-down': ({ seconds }) =>
    `Too many wrong passwords: try again in ${whole('en', seconds)} ${seconds === 1 ? 'second' : 'seconds'}.`,
  'http-password-short': ({ least }) => `The password is too short: at least ${least} characters.`,
  'http-password-long': ({ most }) => `The password is too long: at most ${most} characters.`,
  'http-name-taken': ({ name }) => `There is an account "${name}" already: choose another name.`,
  'http-bad-name': () =>
    'A name begins with a letter or digit and has at most 60 letters, digits, spaces and . _ @ - in it.',
  'http-unknown-account': ({ name }) => `There is no account "${name}".`,
  'http-last-coordinator': () =>
    'This is the only coordinator: make another one first, or nobody could change anything any more.',
  'http-first-coordinator': () =>
    'The first account must be a coordinator’s, or nobody could change anything any more.',
  'http-token-end': () => 'The last day of a token lies ahead: choose a later one.',
  'http-invitation-over': () =>
    'This invitation was used, has ended or never was: ask the coordinator for a new one.',
  'http-unknown-calendar': () =>
    'There is no calendar at this address, or the address was changed: ask the coordinator for the new one.',
  'http-not-a-day': ({ name, given }) =>
    `${name} was "${given}": write the date as year-month-day, for example 2026-02-15.`,
  'http-open': () =>
    'Nobody has an account yet: whoever uses this computer may change everything. "underice account add NAME" makes the first.',
  'http-no-account': ({ host }) =>
    `The service is not started: at ${host} others could reach it, and nobody has an account. Make one first with "underice account add NAME", or leave out --host.`,
  'http-group-no-address': ({ folder }) =>
    `The service is not started: of several groups, each answers under a host name of its own. Give the one in ${folder} its address in its settings.yaml, for example address: http://our-river.localhost:8177.`,
  'http-group-same-host': ({ host, folder, other }) =>
    `The service is not started: the groups in ${other} and ${folder} both want the host name ${host}. Give each its own.`,
  'http-port-taken': ({ host, port }) =>
    `Port ${port} at ${host} is in use by another program: choose another one with --port.`,
  'http-no-such-host': ({ host }) =>
    `This computer has no address ${host}: leave out --host, or name one of its own.`,
  'http-serving': ({ address, folder }) =>
    `Underice answers at ${address}, for the season in ${folder}. Ctrl-C ends it.`,
  'http-stopping': () => 'Underice finishes what it has begun and ends.',
  'http-role-coordinator': () => 'coordinator',
  'http-role-crew': () => 'crew',
  'http-role-reader': () => 'reader',
  'http-calendar-name': ({ group, box }) => (box === null ? group : `${group}: ${box}`),
  'http-calendar-window': ({ box, stage }) => `${box}: ${stage} (estimate)`,
  'http-calendar-window-about': ({ median, from, to }) =>
    `From the first to the last eggs. The median egg: ${median}; 8 times in 10 ${to === null ? `from ${from}` : `between ${from} and ${to}`}.`,
  'http-calendar-download': ({ station }) => `Download ${station}`,
  'http-calendar-download-about': ({ through }) =>
    `The record ends on ${through}. Only where it can be reached safely.`,
  'cli-serve': () => 'answer pages, API and calendar on this computer',
  'cli-serve-host': () => 'address to listen at (default: 127.0.0.1, this computer only)',
  'cli-serve-port': () => 'port to listen at (default: 8177)',
  'cli-account': () => 'who may sign in at the service',
  'cli-account-add': () => 'make an account; the password is asked for, or read from standard input',
  'cli-account-name': () => 'the name to sign in with',
  'cli-account-role': () =>
    'coordinator (everything), crew (load and note down) or reader (look); default: coordinator',
  'cli-account-list': () => 'list every account',
  'cli-account-remove': () => 'take an account away, and end its sessions',
  'cli-account-password': () => 'Password (10 characters or more): ',
  'cli-account-added': ({ name, role }) => `${name} may sign in as ${roleEn(role)}.`,
  'cli-account-removed': ({ name }) => `${name} may not sign in any more.`,
  'cli-account-none': () => 'Nobody has an account.',
  'column-role': () => 'role',
  'column-made': () => 'since',
  'cli-demo-serve': ({ date }) => `The pages show the season as it stood on ${date}.`,
};

const settingEn: Record<Setting, string> = {
  host: 'address the service listens at',
  port: 'port it listens at (0: any free one)',
  address: 'address people type, where a reverse proxy stands before it',
  behindProxy: 'a reverse proxy stands before it and says where requests come from',
  language: 'language where neither the person nor the browser says one',
  log: 'least important lines that are logged',
  uploadMegabytes: 'most MB of one upload',
  unpackedMegabytes: 'most MB an archive may unpack to',
  filesAtOnce: 'most files of one form or archive',
  waitingFiles: 'most files that wait to be accepted',
  waitingMegabytes: 'most MB of them',
  waitingHours: 'hours after which a waiting file is thrown away',
  formKilobytes: "most kB of a form's fields or a document",
  patienceSeconds: 'seconds of silence after which a client is given up',
  requestSeconds: 'most seconds one request may take to arrive',
  sessionDays: 'days a sign-in lasts',
  store:
    'where readings lie: embedded (in the data folder) or influx (on a server); left out, where they do now',
  influxUrl: 'address of the InfluxDB server',
  influxDatabase: "the group's own database (or bucket) there",
  influxUser: 'user name there',
  influxPassword: 'its password; better in UNDERICE_INFLUX_PASSWORD',
  influxToken: 'token of a 2.x or hosted server; better in UNDERICE_INFLUX_TOKEN',
  influxOrganisation: 'organisation of a 2.x or hosted server',
  smtpHost: 'the server that takes our mail; without one, e-mail waits',
  smtpPort: 'its port',
  smtpSecurity: 'starttls and tls never send without encryption; none only where no network lies between',
  smtpUser: 'name at the mail server',
  smtpPassword: 'password at the mail server',
  smtpFrom: 'the address messages come from',
  smtpSeconds: 'seconds the mail server may keep us waiting for its next word',
  messageHours: 'hours after which a message that does not get through is given up',
  windowMovedDays: 'days a window has to move before it is told',
  liftingNearDays: 'days before the lifting window at which it is told',
  silentHours: 'least hours of a station’s silence that are told',
  privateAddresses: 'of this machine and the network around it, what webhooks and feeds may reach',
  feeds: 'stations whose readings come by themselves: folders watched, addresses asked',
};

export const settings: { [Code in keyof SettingsWords]: (words: SettingsWords[Code]) => string } = {
  'settings-unreadable': ({ file }) =>
    `The settings file ${file} cannot be read: check the name and that you may open it.`,
  'settings-not-yaml': ({ file, line }) =>
    `The settings file ${file} is damaged at line ${line}: write one setting a line, for example "port: 8177".`,
  'settings-unknown': ({ place, given, known }) =>
    `There is no setting "${given}" (in ${place}): there are ${list('en', known)}.`,
  'settings-bad-value': ({ place, setting, given, takes }) =>
    `The setting ${setting} was given "${given}" (by ${place}): it takes ${takes}.`,
  'settings-origin': ({ kind, place }) =>
    ({ flag: `flag ${place}`, environment: `environment ${place}`, file: `file ${place}`, usual: 'usual' })[
      kind
    ],
  'settings-what': ({ setting }) => settingEn[setting],
  'cli-settings': () => 'every setting of the service, its value and where that came from',
  'cli-settings-file': () => 'settings file (default: settings.yaml in the data folder)',
  'column-setting': () => 'setting',
  'column-value': () => 'value',
  'column-origin': () => 'from',
  'column-what': () => 'what it is',
};
