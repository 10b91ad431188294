/** Brings the content of a file of one version to the next; it may assume nothing beyond its own version. */
type FileMigration = (file: Record<string, unknown>) => Record<string, unknown>;

/** By the version they start from. None yet: version 1 is the first. */
const fileMigrations: Readonly<Record<number, FileMigration>> = {};

/** The file in version `to`. @throws when a step is missing, which is a mistake of this program */
export function migrateFile(
  file: Record<string, unknown> & { version: number },
  to: number,
  migrations: Readonly<Record<number, FileMigration>> = fileMigrations,
): Record<string, unknown> {
  let migrated: Record<string, unknown> = file;
  for (let version = file.version; version < to; version++) {
    const step = migrations[version];
    if (!step) throw new Error(`No migration of build files from version ${version}`);
    migrated = { ...step(migrated), version: version + 1 };
  }
  return migrated;
}
