package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.file.FileSet;
import evenrise.model.file.WriteFailed;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Map;

/**
 * Where documents go: a folder that holds those of one run, all of them or all of the run before.
 *
 * @param inputs what the documents are made from, which they never overwrite
 */
record DocumentFolder(List<Source> inputs) {
    /** @return the names of what is written */
    List<String> write(Path folder, boolean overwrites, Map<String, byte[]> files) {
        refuse(folder, overwrites, files.keySet());
        FileSet set = new FileSet(folder);
        files.forEach(set::add);
        Outputs.write(set::write);
        return List.copyOf(files.keySet());
    }

    /** @throws JobFailed where something there is not of an earlier run */
    void refuse(Path folder, boolean overwrites, Collection<String> names) {
        for (String name : names) {
            Outputs.refuseInputs(folder.resolve(name), inputs);
        }
        if (overwrites) {
            return;
        }
        try {
            List<String> foreign = new FileSet(folder)
                    .foreign(names.stream()
                            .filter(each -> !each.equals(FileSet.MANIFEST))
                            .toList());
            if (!foreign.isEmpty()) {
                throw new JobFailed(
                        JobFailed.Reason.OUTPUT,
                        "folder '" + Harmless.shown(folder.toString())
                                + "' holds files that no earlier report wrote or that were "
                                + "changed since: " + Harmless.shown(String.join(", ", foreign))
                                + ". Name another folder, or --force to overwrite them.");
            }
        } catch (WriteFailed e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, e.getMessage());
        }
    }
}
