/**
 * What a match needs to be kept: compressor maps, and predictions that carry their whole curve and what computed them. A
 * check of a column cannot be altered in place, so the table of predictions is made anew with its rows and its triggers.
 */
export const match = `
create table compressorMap (
  sequence integer primary key autoincrement,
  id text not null unique,
  name text not null,
  form text not null check (form in ('points', 'rated')),
  reference text not null check (json_valid(reference)),
  geometry text not null check (json_valid(geometry)),
  points text not null check (json_valid(points)),
  leftEnd text not null check (leftEnd in ('surge', 'not known')),
  origin text not null,
  notes text not null,
  invented integer not null check (invented in (0, 1)),
  createdAt text not null
) strict;

drop trigger predictionIsNotAltered;
drop trigger predictionIsNotDeleted;
alter table prediction rename to predictionBefore;
drop index predictionOfTrial;
create table prediction (
  sequence integer primary key autoincrement,
  id text not null unique,
  trialId text not null references trial (id),
  key text not null,
  what text not null check (what in ('meanGain', 'peakPower', 'highestBoost')),
  value real not null,
  low real not null,
  high real not null,
  basis text not null,
  at text not null,
  curve text not null default 'null' check (json_valid(curve)),
  madeBy text not null default 'null' check (json_valid(madeBy))
) strict;
insert into prediction (sequence, id, trialId, key, what, value, low, high, basis, at)
  select sequence, id, trialId, key, what, value, low, high, basis, at from predictionBefore;
drop table predictionBefore;
create index predictionOfTrial on prediction (trialId);
create trigger predictionIsNotAltered before update on prediction
begin select raise(abort, 'a prediction is never altered'); end;
create trigger predictionIsNotDeleted before delete on prediction
begin select raise(abort, 'a prediction is never altered'); end;
`;
