/**
 * The first schema. Columns are named as the fields of the model; nested things without a life of their own are JSON.
 * `sequence` is the order in which things came into the book.
 */
export const first = `
create table book (
  id text not null primary key,
  name text not null,
  invented integer not null check (invented in (0, 1)),
  createdAt text not null,
  singleton integer not null default 1 unique check (singleton = 1)
) strict;

create table engine (
  sequence integer primary key autoincrement,
  id text not null unique,
  name text not null,
  buildRevision text not null,
  notes text not null,
  invented integer not null check (invented in (0, 1))
) strict;

create table package (
  sequence integer primary key autoincrement,
  id text not null unique,
  name text not null,
  covers text not null check (json_valid(covers)),
  invented integer not null check (invented in (0, 1))
) strict;

create table combination (
  sequence integer primary key autoincrement,
  id text not null unique,
  engineId text not null references engine (id),
  name text not null,
  sheet text not null check (json_valid(sheet)),
  revision integer not null check (revision >= 1),
  madeFromId text references combination (id),
  createdAt text not null,
  invented integer not null check (invented in (0, 1))
) strict;

create table combinationPackage (
  combinationId text not null references combination (id),
  place integer not null,
  packageId text not null references package (id),
  primary key (combinationId, place)
) strict;

create table setUp (
  sequence integer primary key autoincrement,
  id text not null unique,
  combinationId text not null references combination (id),
  fittedAt text not null,
  notes text not null
) strict;

create table session (
  sequence integer primary key autoincrement,
  id text not null unique,
  name text not null,
  cell text not null,
  day text not null,
  notes text not null
) strict;

create table file (
  sequence integer primary key autoincrement,
  hash text not null unique check (length(hash) = 64),
  name text not null,
  byteLength integer not null check (byteLength >= 0),
  addedAt text not null,
  mapping text not null check (json_valid(mapping))
) strict;

create table pull (
  sequence integer primary key autoincrement,
  id text not null unique,
  name text not null,
  combinationId text references combination (id),
  setUpId text references setUp (id),
  sessionId text references session (id),
  orderInSession integer,
  recordedAt text,
  cell text,
  operator text,
  form text not null check (form in ('curve', 'summary')),
  summary text not null check (json_valid(summary)),
  weather text not null check (json_valid(weather)),
  carried text not null check (json_valid(carried)),
  sweep text not null check (json_valid(sweep)),
  tune text not null check (json_valid(tune)),
  places text not null check (json_valid(places)),
  notes text not null check (json_valid(notes)),
  events text not null check (json_valid(events)),
  outcome text not null check (outcome in ('completed', 'aborted')),
  origin text not null,
  fileHash text references file (hash),
  invented integer not null check (invented in (0, 1)),
  channelsHash text not null
) strict;
create index pullOfCombination on pull (combinationId);
create index pullOfSession on pull (sessionId);
create index pullOfFile on pull (fileHash);

create table channel (
  pullId text not null references pull (id) deferrable initially deferred,
  place integer not null,
  meaning text not null,
  name text not null,
  unit text not null,
  kind text not null,
  origin text not null,
  count integer not null,
  samples blob not null check (length(samples) = 8 * count),
  primary key (pullId, place)
) strict;

create table trial (
  sequence integer primary key autoincrement,
  id text not null unique,
  question text not null,
  kind text not null check (kind in ('comparison', 'survey')),
  correction text not null,
  averagesWindowRpm text not null check (json_valid(averagesWindowRpm)),
  remark text not null,
  createdAt text not null,
  invented integer not null check (invented in (0, 1))
) strict;

create table trialCombination (
  trialId text not null references trial (id),
  place integer not null,
  key text not null,
  combinationId text not null references combination (id),
  shortName text not null,
  primary key (trialId, place)
) strict;

create table trialPull (
  trialId text not null references trial (id),
  place integer not null,
  pullId text not null references pull (id),
  key text not null,
  role text not null check (role in ('counted', 'rejected', 'warm-up')),
  reason text,
  primary key (trialId, place)
) strict;
create index trialOfPull on trialPull (pullId);

create table log (
  id integer primary key autoincrement,
  at text not null,
  act text not null,
  subject text not null,
  reason text not null,
  before text not null check (json_valid(before)),
  after text not null check (json_valid(after))
) strict;

-- Measured data is never altered, whoever writes the query.
create trigger channelIsNotAltered before update on channel
begin select raise(abort, 'measured data is never altered: a channel'); end;
create trigger channelIsNotDeleted before delete on channel
begin select raise(abort, 'measured data is never altered: a channel'); end;
-- A pull's channels go in before the pull itself, so that none can be added to it later.
create trigger channelIsNotAdded before insert on channel
when exists (select 1 from pull where id = new.pullId)
begin select raise(abort, 'measured data is never altered: a channel of a stored pull'); end;
create trigger pullIsNotAltered before update of id, form, summary, origin, fileHash, invented, channelsHash on pull
begin select raise(abort, 'measured data is never altered: a pull'); end;
create trigger pullIsNotDeleted before delete on pull
begin select raise(abort, 'measured data is never altered: a pull'); end;
create trigger fileIsNotAltered before update on file
begin select raise(abort, 'measured data is never altered: a file'); end;
create trigger fileIsNotDeleted before delete on file
begin select raise(abort, 'measured data is never altered: a file'); end;
create trigger logIsNotAltered before update on log
begin select raise(abort, 'the log is never altered'); end;
create trigger logIsNotDeleted before delete on log
begin select raise(abort, 'the log is never altered'); end;
`;
