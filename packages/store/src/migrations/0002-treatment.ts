/** How a pull is read. A pull of an older book was read as it comes. */
export const treatment = `
alter table pull add column treatment text not null
  default '{"lags":{},"windowRpm":null,"binWidthRpm":null,"addInertia":false}' check (json_valid(treatment));
`;
