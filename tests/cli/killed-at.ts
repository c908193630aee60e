// Writes a result into a folder and is killed at the step of the disk that it is given.
import { realDisk } from "../../src/cli/files/disk.ts";
import { writeFiles } from "../../src/cli/files/write.ts";
import { result, watched } from "./folders.ts";

const [folder = "", number = "", files = "{}"] = process.argv.slice(2);

const disk = watched(realDisk, (_step, _words, now) => {
  if (now === Number(number)) process.kill(process.pid, "SIGKILL");
});
await writeFiles(result(folder, JSON.parse(files) as Record<string, string>), disk);
