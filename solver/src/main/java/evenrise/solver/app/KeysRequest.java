package evenrise.solver.app;

import java.nio.file.Path;
import java.util.List;

/**
 * Keys for machines that are to take part are to be made.
 *
 * @param folder of the authority, and of a folder for each machine; an authority that is there makes the new ones, too
 * @param machines names of the folders
 * @since 0.1.0
 */
public record KeysRequest(Path folder, List<String> machines) {
    public KeysRequest {
        machines = List.copyOf(machines);
    }
}
