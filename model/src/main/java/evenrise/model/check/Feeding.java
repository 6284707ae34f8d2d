package evenrise.model.check;

import evenrise.model.check.ProjectParts.Lines;
import evenrise.model.contract.Words;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;

/** Every node and panel is fed by something, in the end by the supply or a source, and transformers fit both sides. */
final class Feeding {
    private final ProjectParts parts;
    private final Consumer<Objection> found;

    private Feeding(ProjectParts parts, Consumer<Objection> found) {
        this.parts = parts;
        this.found = found;
    }

    static void check(ProjectParts parts, Consumer<Objection> found) {
        Feeding check = new Feeding(parts, found);
        check.names();
        check.circles();
        List<DistributionNode> nodes = parts.project.nodes();
        for (int i = 0; i < nodes.size(); i++) {
            check.node(nodes.get(i), "/nodes/" + i);
        }
        for (int i = 0; i < parts.project.panels().size(); i++) {
            check.reference(parts.project.panels().get(i).fedFrom(), "/panels/" + i);
        }
        check.voltages();
    }

    /** Nodes and panels share their names; the supply's is taken. */
    private void names() {
        Set<String> panels = new HashSet<>();
        for (int i = 0; i < parts.project.panels().size(); i++) {
            String id = parts.project.panels().get(i).id();
            panels.add(id);
            notTheSupply(id, "/panels/" + i);
        }
        for (int i = 0; i < parts.project.nodes().size(); i++) {
            String id = parts.project.nodes().get(i).id();
            notTheSupply(id, "/nodes/" + i);
            if (panels.contains(id)) {
                error(
                        "/nodes/" + i + "/id",
                        Shown.quoted(id) + ", which a panel has, too",
                        "a name of its own among nodes and panels",
                        "Maybe rename one of them.");
            }
        }
    }

    private void notTheSupply(String id, String at) {
        if (id.equals(ProjectParts.SUPPLY)) {
            error(at + "/id", Shown.quoted(id), "another name: this one is the supply's", "Maybe rename it.");
        }
    }

    private void circles() {
        Map<String, List<String>> arrows = new LinkedHashMap<>();
        parts.project.panels().forEach(each -> arrows.putIfAbsent(each.id(), up(each.fedFrom())));
        parts.project.nodes().forEach(each -> arrows.putIfAbsent(each.id(), up(each.fedFrom())));
        for (List<String> circle : Circles.in(arrows)) {
            String first = circle.get(0);
            int node = parts.project.nodes().stream()
                    .map(DistributionNode::id)
                    .toList()
                    .indexOf(first);
            int panel = parts.project.panels().stream().map(Panel::id).toList().indexOf(first);
            String at = panel >= 0 ? "/panels/" + panel : "/nodes/" + node;
            error(
                    at + "/fed_from",
                    Shown.quoted(circle.get(1 % circle.size())) + ", in a circle of " + Shown.quoted(circle),
                    "something that the supply or a source feeds in the end",
                    "Maybe feed one of them from the supply.");
        }
    }

    private static List<String> up(Optional<String> fedFrom) {
        return fedFrom.filter(id -> !id.equals(ProjectParts.SUPPLY)).stream().toList();
    }

    private void reference(Optional<String> fedFrom, String at) {
        if (fedFrom.isEmpty()
                || fedFrom.get().equals(ProjectParts.SUPPLY)
                || parts.nodes.containsKey(fedFrom.get())
                || parts.panels.containsKey(fedFrom.get())
                || !parts.knows("/nodes")
                || !parts.knows("/panels")) {
            return;
        }
        Set<String> known = new TreeSet<>(parts.nodes.keySet());
        known.addAll(parts.panels.keySet());
        known.add(ProjectParts.SUPPLY);
        String cure = Nearest.cure(fedFrom.get(), known, "Maybe it was renamed or removed.");
        error(at + "/fed_from", Shown.quoted(fedFrom.get()), "the id of one of the nodes or panels, or supply", cure);
    }

    private void node(DistributionNode node, String at) {
        reference(node.fedFrom(), at);
        if (node.source().isPresent() && node.fedFrom().isPresent()) {
            error(
                    at + "/fed_from",
                    Shown.quoted(node.fedFrom().get()) + " though the node is a source",
                    "nothing: a source is fed by nothing, and sources in parallel are not modelled, for how they share"
                            + " a current depends on their impedances and controls",
                    "Maybe leave out source, or fed_from.");
        }
        if (node.source().isPresent() && node.transformer().isPresent()) {
            error(
                    at + "/transformer",
                    "there though the node is a source",
                    "nothing: a transformer at a source is a node of its own, fed from it",
                    "Maybe add a node for it.");
            return;
        }
        Optional<Lines> primary = parts.linesOf(node.fedFrom());
        if (node.transformer().isPresent() && primary.isPresent() && parts.knows(at + "/transformer")) {
            transformer(node.transformer().get(), primary.get().system(), at + "/transformer");
        }
    }

    private void transformer(Transformer transformer, PhaseSystem primary, String at) {
        PhaseSystem secondary = transformer.secondary().system();
        boolean isSingle = transformer.connection() == TransformerConnection.SINGLE;
        if (Math.abs(transformer.shiftDegrees()) != SHIFT_DEGREES) {
            error(at + "/shift_deg", "" + transformer.shiftDegrees(), "30 or -30", "");
        }
        if (isSingle && secondary == PhaseSystem.THREE_PHASE) {
            error(
                    at + "/secondary/system",
                    Shown.quoted("three-phase"),
                    "split-phase or single-phase: a single transformer feeds no other",
                    "Maybe the connection is delta-wye.");
        }
        if (!isSingle && secondary != PhaseSystem.THREE_PHASE) {
            error(
                    at + "/secondary/system",
                    Shown.quoted(Words.word(secondary)),
                    "three-phase, as " + Words.word(transformer.connection()) + " has on both sides",
                    "Maybe the connection is single.");
        }
        if (!isSingle && primary != PhaseSystem.THREE_PHASE) {
            error(
                    at + "/connection",
                    Shown.quoted(Words.word(transformer.connection())) + " on " + Words.word(primary),
                    "single: the others have three phases on both sides",
                    "Maybe it is fed from elsewhere.");
        }
        if (!isSingle && transformer.primaryPhases().size() % ALL != 0) {
            error(
                    at + "/primary_phases",
                    "" + transformer.primaryPhases(),
                    "nothing: only a single transformer states them",
                    "Maybe the connection is single.");
        }
        if (isSingle && transformer.primaryPhases().size() > 2) {
            error(
                    at + "/primary_phases",
                    "" + transformer.primaryPhases(),
                    "one or two phases",
                    "Maybe leave one out.");
        }
        for (int k = 0; k < transformer.primaryPhases().size(); k++) {
            if (!primary.phases().contains(transformer.primaryPhases().get(k))) {
                error(
                        at + "/primary_phases/" + k,
                        transformer.primaryPhases().get(k).name(),
                        "one of: " + primary.phases(),
                        "Maybe it is fed from elsewhere.");
            }
        }
    }

    private static final int SHIFT_DEGREES = 30;
    private static final int ALL = 3;

    /** Where panels differ in voltage, every load says which it is for, or where it may sit. */
    private void voltages() {
        List<Optional<Double>> volts = parts.project.panels().stream()
                .map(panel -> parts.linesOf(panel.fedFrom()).map(Lines::lineToNeutralVolts))
                .distinct()
                .toList();
        if (volts.size() < 2 || volts.contains(Optional.<Double>empty())) {
            return;
        }
        for (int i = 0; i < parts.project.loads().size(); i++) {
            Load load = parts.project.loads().get(i);
            if (load.lineToNeutralVolts().isEmpty()
                    && load.panels().isEmpty()
                    && load.fixed().panel().isEmpty()
                    && parts.knows("/loads/" + i + "/panels")
                    && parts.knows("/loads/" + i + "/line_to_neutral_v")
                    && parts.knows("/loads/" + i + "/fixed")) {
                error(
                        "/loads/" + i + "/line_to_neutral_v",
                        "missing, and so are panels, though panels differ in voltage",
                        "the voltage to neutral that the load is for, or its panels",
                        "Maybe add \"line_to_neutral_v\".");
            }
        }
    }

    private void error(String pointer, String value, String expected, String cure) {
        found.accept(Objection.error(pointer, value, expected, cure));
    }
}
