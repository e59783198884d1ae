/**
 * What a verdict needs to be kept: the plan of a trial, whether the engine was taken apart for a combination, rules that
 * a person silenced with the reason, and predictions made before the pull. `what` of a silenced rule is there to be told
 * by: without it a record of the table would look like a session's to a rescue that has lost the schema. Beside what a list
 * remembers stands the digest of a pull for the shop's figures, in columns of its own: ten thousand are read at once.
 */
export const verdict = `
alter table trial add column plan text not null default 'null' check (json_valid(plan));
alter table trialCombination add column takenApart integer check (takenApart in (0, 1));

alter table listed add column digest blob;
alter table listed add column runAs text;

create table silenced (
  sequence integer primary key autoincrement,
  id text not null unique,
  what text not null default 'rule' check (what in ('rule')),
  ruleId text not null,
  subject text not null,
  reason text not null,
  at text not null
) strict;
create index silencedBySubject on silenced (subject);

create table prediction (
  sequence integer primary key autoincrement,
  id text not null unique,
  trialId text not null references trial (id),
  key text not null,
  what text not null check (what in ('meanGain', 'peakPower')),
  value real not null,
  low real not null,
  high real not null,
  basis text not null,
  at text not null
) strict;
create index predictionOfTrial on prediction (trialId);
create trigger predictionIsNotAltered before update on prediction
begin select raise(abort, 'a prediction is never altered'); end;
create trigger predictionIsNotDeleted before delete on prediction
begin select raise(abort, 'a prediction is never altered'); end;
`;
