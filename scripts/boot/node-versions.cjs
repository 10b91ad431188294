'use strict';

/** 22.16 is the first whose SQLite needs no flag and can back up; odd lines are never supported for long. */
function newEnough(version) {
  const [major, minor] = version.split('.').map(Number);
  return (major > 22 || (major === 22 && minor >= 16)) && (major % 2 === 0 || major > 26);
}

function words(version) {
  return (
    'Fairbend needs Node 22.16 or newer, or any from 18 on with npm to fetch one; this is Node ' +
    version +
    '. Install a newer one from nodejs.org, then try again.'
  );
}

module.exports = { newEnough, words };
