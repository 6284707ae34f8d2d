package evenrise.model.check;

import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.QuantityRange;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/** Loads of an open quantity exist, are of one quantity alone, and can be more or fewer without anything else changing. */
final class QuantityRanges {
    private final ProjectParts parts;
    private final Consumer<Objection> found;
    private final Set<String> seen = new HashSet<>();

    private QuantityRanges(ProjectParts parts, Consumer<Objection> found) {
        this.parts = parts;
        this.found = found;
    }

    static void check(ProjectParts parts, Consumer<Objection> found) {
        QuantityRanges check = new QuantityRanges(parts, found);
        for (int i = 0; i < parts.project.quantities().size(); i++) {
            check.range(parts.project.quantities().get(i), "/quantities/" + i);
        }
    }

    private void range(QuantityRange range, String at) {
        if (range.low() > range.listed()) {
            found.accept(Objection.error(
                    at + "/low", "" + range.low(), "at most " + range.listed() + ", the number of loads listed", ""));
        }
        if (range.high() < range.listed()) {
            found.accept(Objection.error(
                    at + "/high",
                    "" + range.high(),
                    "at least " + range.listed() + ", the number of loads listed",
                    ""));
        }
        if (range.likely().isPresent() && (range.tip() < range.low() || range.tip() > range.high())) {
            found.accept(Objection.error(
                    at + "/likely", "" + range.tip(), "a number from " + range.low() + " to " + range.high(), ""));
        }
        if (!range.stated() && (range.low() != range.listed() || range.high() != range.listed())) {
            found.accept(Objection.error(
                    at + "/stated",
                    "false",
                    "low and high as " + range.listed() + ", the number of loads listed: nobody has said how many",
                    ""));
        }
        for (int j = 0; j < range.loads().size() && parts.knows("/loads"); j++) {
            load(range.loads().get(j), at + "/loads/" + j);
        }
    }

    private void load(String id, String at) {
        Load load = parts.loads.get(id);
        if (load == null) {
            found.accept(Objection.error(
                    at,
                    Shown.quoted(id),
                    "the id of one of the loads",
                    Nearest.cure(id, parts.loads.keySet(), "Maybe it was renamed or removed.")));
        } else if (!seen.add(id)) {
            found.accept(Objection.error(at, Shown.quoted(id), "a load that no other quantity lists", ""));
        } else {
            bound(load)
                    .ifPresent(why -> found.accept(Objection.error(
                            at, Shown.quoted(id) + ", " + why, "a load that there may be more or fewer of", "")));
        }
    }

    private Optional<String> bound(Load load) {
        List<Load> loads = parts.project.loads();
        if (!load.fixed().equals(FixedPlace.NONE)) {
            return Optional.of("whose place is fixed");
        }
        if (load.comesWith().isPresent()
                || loads.stream().anyMatch(each -> each.comesWith().equals(Optional.of(load.id())))) {
            return Optional.of("which shares a contactor");
        }
        boolean feedsABoard =
                parts.project.boards().stream().anyMatch(board -> board.fedBy().equals(Optional.of(load.id())));
        return feedsABoard ? Optional.of("which feeds a board") : Optional.empty();
    }
}
