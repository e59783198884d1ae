/**
 * What a book needs for years: who may see a thing; cells with their instruments; layouts of files met before; settings
 * of the shop; what was withdrawn (an addition undone: hidden, never deleted); log entries with global names, so that two
 * books can be merged, with what they undo and what was done together. `listed` is a memory of what a list shows of a
 * pull and can be emptied at any time: it is made anew from what was measured, and goes by itself where what it rests on
 * was changed. How a file's columns were understood may be mended once its pulls were withdrawn; its bytes never.
 */
export const wholeBook = `
alter table pull add column audience text not null
  default '{"who":"everyone","notBefore":null}' check (json_valid(audience));
alter table trial add column audience text not null
  default '{"who":"everyone","notBefore":null}' check (json_valid(audience));

create table cell (
  sequence integer primary key autoincrement,
  id text not null unique,
  name text not null,
  brake text not null,
  altitude real,
  momentOfInertia real,
  instruments text not null check (json_valid(instruments)),
  notes text not null
) strict;

create table layout (
  sequence integer primary key autoincrement,
  fingerprint text not null unique,
  name text not null,
  columns text not null check (json_valid(columns)),
  said text not null check (json_valid(said)),
  confirmedAt text not null
) strict;

create table setting (
  name text not null primary key,
  value text not null check (json_valid(value))
) strict;

create table withdrawn (
  kind text not null,
  id text not null,
  at text not null,
  primary key (kind, id)
) strict;

create table listed (
  pullId text not null primary key references pull (id),
  key text not null,
  words text not null,
  figures text not null check (json_valid(figures)),
  peakPower real,
  peakTorque real,
  boosted integer
) strict;
create index listedByPower on listed (peakPower);
create trigger pullIsListedAnew after update on pull
begin delete from listed where pullId = new.id; end;
create trigger combinationIsListedAnew after update on combination
begin delete from listed where pullId in (select id from pull where combinationId = new.id); end;
create trigger engineIsListedAnew after update on engine
begin delete from listed where pullId in (
  select pull.id from pull join combination on combination.id = pull.combinationId where combination.engineId = new.id
); end;

drop trigger fileIsNotAltered;
create trigger fileIsNotAltered before update of hash, name, byteLength, addedAt on file
begin select raise(abort, 'measured data is never altered: a file'); end;
create index pullByTime on pull (recordedAt);

drop trigger logIsNotAltered;
alter table log add column uid text not null default '';
alter table log add column undoes text;
alter table log add column together text not null default '';
update log set uid = (select id from book) || '/' || id;
update log set together = uid;
create unique index logByUid on log (uid) where uid <> '';
create index logBySubject on log (subject);
create index logByUndone on log (undoes) where undoes is not null;
create index logByTogether on log (together);
create trigger logIsNotAltered before update on log
begin select raise(abort, 'the log is never altered'); end;
`;
