package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * A project is to be made of an equipment list.
 *
 * @param list a workbook (.xlsx) or a table of values (.csv)
 * @param mapping says how the list is to be read
 * @param name of the project; empty for the list's name
 * @param target where the project is written
 * @param withoutBadRows whether it is written without the rows that cannot be taken over
 * @param placesLifeSafety whether life-safety equipment gets a place in the project
 * @since 0.1.0
 */
public record ImportRequest(
        Path list,
        Optional<Path> mapping,
        Optional<String> name,
        Path target,
        boolean withoutBadRows,
        boolean placesLifeSafety) {
    public static ImportRequest of(Path list, Path target) {
        return new ImportRequest(list, Optional.empty(), Optional.empty(), target, false, false);
    }
}
