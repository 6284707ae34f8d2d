package evenrise.model.check;

import evenrise.model.check.ProjectParts.Lines;
import evenrise.model.contract.Decimals;
import evenrise.model.contract.Words;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Panel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;

/** What a panel or node may be transferred to exists, has the same voltage, and never feeds it by itself. */
final class Transfers {
    /** As between a load and where it sits. */
    private static final double SAME_VOLTS = 0.05;

    private final ProjectParts parts;
    private final Consumer<Objection> found;

    private record Fed(
            String at,
            String id,
            Optional<String> fedFrom,
            Optional<String> alternate,
            OptionalDouble seconds,
            Optional<Boolean> neutral,
            boolean isSource) {}

    private Transfers(ProjectParts parts, Consumer<Objection> found) {
        this.parts = parts;
        this.found = found;
    }

    static void check(ProjectParts parts, Consumer<Objection> found) {
        if (!parts.knows("/nodes") || !parts.knows("/panels")) {
            return;
        }
        Transfers check = new Transfers(parts, found);
        List<Fed> all = check.all();
        all.forEach(check::one);
        check.circles(all);
    }

    private List<Fed> all() {
        List<Fed> all = new ArrayList<>();
        for (int i = 0; i < parts.project.panels().size(); i++) {
            Panel it = parts.project.panels().get(i);
            all.add(new Fed(
                    "/panels/" + i,
                    it.id(),
                    it.fedFrom(),
                    it.alternateFedFrom(),
                    it.transferSeconds(),
                    it.neutralSwitched(),
                    false));
        }
        for (int i = 0; i < parts.project.nodes().size(); i++) {
            DistributionNode it = parts.project.nodes().get(i);
            all.add(new Fed(
                    "/nodes/" + i,
                    it.id(),
                    it.fedFrom(),
                    it.alternateFedFrom(),
                    it.transferSeconds(),
                    it.neutralSwitched(),
                    it.source().isPresent()));
        }
        return all;
    }

    private void one(Fed it) {
        if (it.alternate().isEmpty()) {
            if (it.seconds().isPresent()) {
                error(
                        it.at() + "/transfer_s",
                        Decimals.toThousandths(it.seconds().getAsDouble()),
                        "nothing without an" + " alternate_fed_from",
                        "Maybe state what it is transferred to.");
            }
            if (it.neutral().isPresent()) {
                error(
                        it.at() + "/neutral_switched",
                        "stated",
                        "nothing without an alternate_fed_from",
                        "Maybe state what it is transferred to.");
            }
            return;
        }
        String at = it.at() + "/alternate_fed_from";
        String to = it.alternate().get();
        if (!to.equals(ProjectParts.SUPPLY) && !parts.nodes.containsKey(to) && !parts.panels.containsKey(to)) {
            Set<String> known = new TreeSet<>(parts.nodes.keySet());
            known.addAll(parts.panels.keySet());
            known.add(ProjectParts.SUPPLY);
            String cure = Nearest.cure(to, known, "Maybe it was renamed or removed.");
            error(at, Shown.quoted(to), "the id of one of the nodes or panels, or supply", cure);
            return;
        }
        if (it.isSource()) {
            error(
                    at,
                    Shown.quoted(to) + " though the node is a source",
                    "nothing: a source is fed by nothing",
                    "Maybe state it of the node that the source feeds.");
            return;
        }
        if (to.equals(it.fedFrom().orElse(ProjectParts.SUPPLY))) {
            error(at, Shown.quoted(to) + ", which feeds it as usual", "another source", "Maybe leave it out.");
            return;
        }
        if (it.seconds().isEmpty() && parts.knows(it.at() + "/transfer_s")) {
            error(
                    it.at() + "/transfer_s",
                    "missing",
                    "the time without voltage while it is transferred",
                    "Maybe add \"transfer_s\".");
        }
        voltages(it, to, at);
    }

    private void voltages(Fed it, String to, String at) {
        Optional<Lines> usual = parts.linesOf(it.fedFrom());
        Optional<Lines> other = parts.linesOf(Optional.of(to));
        if (usual.isEmpty() || other.isEmpty()) {
            return;
        }
        double volts = usual.get().lineToNeutralVolts();
        boolean isSame = usual.get().system() == other.get().system()
                && Math.abs(other.get().lineToNeutralVolts() - volts) <= SAME_VOLTS * volts;
        if (!isSame) {
            error(
                    at,
                    Shown.quoted(to) + " of "
                            + Decimals.toThousandths(other.get().lineToNeutralVolts()) + " V "
                            + Words.word(other.get().system()),
                    "the system of what feeds it as usual and its " + Decimals.toThousandths(volts) + " V within 5 %",
                    "Maybe a transformer stands between them.");
        }
    }

    /** Whatever is transferred, in the end a source feeds everything. */
    private void circles(List<Fed> all) {
        Map<String, List<String>> usual = new LinkedHashMap<>();
        Map<String, List<String>> both = new LinkedHashMap<>();
        for (Fed each : all) {
            List<String> up = new ArrayList<>();
            each.fedFrom().filter(id -> !id.equals(ProjectParts.SUPPLY)).ifPresent(up::add);
            usual.putIfAbsent(each.id(), List.copyOf(up));
            each.alternate().filter(id -> !id.equals(ProjectParts.SUPPLY)).ifPresent(up::add);
            both.putIfAbsent(each.id(), up);
        }
        if (!Circles.in(usual).isEmpty()) {
            return; // said already
        }
        for (List<String> circle : Circles.in(both)) {
            Fed first = all.stream()
                    .filter(each -> circle.contains(each.id()))
                    .filter(each -> each.alternate().filter(circle::contains).isPresent())
                    .findFirst()
                    .orElseThrow();
            error(
                    first.at() + "/alternate_fed_from",
                    Shown.quoted(first.alternate().orElseThrow()) + ", in a circle of " + Shown.quoted(circle),
                    "something that it does not feed itself, however others are transferred",
                    "Maybe transfer one of them alone.");
        }
    }

    private void error(String pointer, String value, String expected, String cure) {
        found.accept(Objection.error(pointer, value, expected, cure));
    }
}
