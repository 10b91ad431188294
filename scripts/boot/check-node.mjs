// Plain old syntax: an old Node must be able to read this far, so that it can say what is missing.
const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(
    `Fairbend needs Node 20.19 or newer; this is Node ${process.versions.node}. Get a newer one from https://nodejs.org and try again.`,
  );
  process.exit(1);
}
