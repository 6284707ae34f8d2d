package evenrise.model.check;

import evenrise.model.contract.FormatVersion;
import evenrise.model.intake.Mapping;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Finds what makes a mapping none of ours. */
public final class MappingChecks {
    private MappingChecks() {}

    /** The format is ours, and its kinds of board are whole and named apart. */
    public static List<Objection> errors(Mapping mapping) {
        if (!FormatVersion.isRead(mapping.format(), Mapping.FORMAT)) {
            return List.of(Identity.format(mapping.format(), Mapping.FORMAT));
        }
        List<Objection> found = new ArrayList<>();
        BoardTypeChecks.check(mapping.boardTypes(), any -> true, found::add);
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < mapping.boardTypes().size(); i++) {
            String id = mapping.boardTypes().get(i).id();
            if (!ids.add(id)) {
                found.add(Objection.error(
                        "/board_types/" + i + "/id", "'" + id + "' twice", "a name of its own for each", ""));
            }
        }
        return found;
    }
}
