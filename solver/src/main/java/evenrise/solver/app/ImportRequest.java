package evenrise.solver.app;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A project is to be made of an equipment list.
 *
 * @param list a workbook (.xlsx) or a table of values (.csv)
 * @param mapping says how the list is to be read
 * @param name of the project; empty for the list's name
 * @param target where the project is written; empty where it is only read and told about
 * @param withoutBadRows whether it is written without the rows that cannot be taken over
 * @param placesLifeSafety whether life-safety equipment gets a place in the project
 * @param ignored headers of columns that are not to be read
 * @param wholeMapping where a mapping is written that says in full how the list was read
 * @since 0.1.0
 */
public record ImportRequest(
        Path list,
        Optional<Path> mapping,
        Optional<String> name,
        Optional<Path> target,
        boolean withoutBadRows,
        boolean placesLifeSafety,
        List<String> ignored,
        Optional<Path> wholeMapping) {
    public ImportRequest {
        ignored = List.copyOf(ignored);
    }

    public static ImportRequest of(Path list, Path target) {
        return new ImportRequest(
                list,
                Optional.empty(),
                Optional.empty(),
                Optional.of(target),
                false,
                false,
                List.of(),
                Optional.empty());
    }
}
