package evenrise.model.check;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Load;
import evenrise.model.project.Role;
import java.util.List;
import java.util.function.Consumer;

/** What loads say of each other and of their group fits their kind. */
final class Relations {
    private static final String SWITCH_IT = "Maybe set switched to true.";

    private Relations() {}

    static void check(ProjectParts parts, Consumer<Objection> found) {
        List<Load> loads = parts.project.loads();
        for (int i = 0; i < loads.size(); i++) {
            Load load = loads.get(i);
            String at = "/loads/" + i;
            if (!load.switched()) {
                unswitched(load, at, found);
            }
            if (load.needsGroups().isPresent()) {
                needs(parts, load, at + "/needs_groups", found);
            }
            for (int k = 0; k < load.comesAfter().size(); k++) {
                Load before = parts.loads.get(load.comesAfter().get(k));
                if (before != null && !before.switched() && load.switched()) {
                    String value = Shown.quoted(before.id()) + ", which is unswitched";
                    found.accept(
                            Objection.error(at + "/comes_after/" + k, value, "a switched load", "Maybe leave it out."));
                }
            }
            for (int k = 0; k < load.apartFrom().size(); k++) {
                notItself(load, load.apartFrom().get(k), at + "/apart_from/" + k, found);
            }
            for (int k = 0; k < load.samePhaseAs().size(); k++) {
                Load other = parts.loads.get(load.samePhaseAs().get(k));
                String pointer = at + "/same_phase_as/" + k;
                notItself(load, load.samePhaseAs().get(k), pointer, found);
                boolean known =
                        other != null && parts.knows(at + "/poles") && parts.knows(parts.pointer(other) + "/poles");
                if (known && other.poles() != load.poles()) {
                    String value = Shown.quoted(other.id()) + ", which has " + poles(other.poles());
                    String expected = "a load with " + poles(load.poles()) + " like this one";
                    found.accept(Objection.error(pointer, value, expected, "Maybe one of the pole counts is wrong."));
                }
            }
        }
    }

    private static void needs(ProjectParts parts, Load load, String at, Consumer<Objection> found) {
        if (!load.switched() || load.role() == Role.PROCESSING) {
            found.accept(Objection.error(
                    at,
                    Shown.quoted(load.needsGroups().orElseThrow()) + " though the load "
                            + (load.switched() ? "is processing" : "is unswitched"),
                    "nothing, or a switched amplifier or auxiliary load",
                    load.switched() ? "Maybe state comes_after, which emergencies obey, too." : SWITCH_IT));
            return;
        }
        List<String> groups = load.needsGroups().orElseThrow();
        for (int k = 0; k < groups.size(); k++) {
            String group = groups.get(k);
            boolean hasProcessing = parts.project.loads().stream()
                    .anyMatch(each -> each.switched()
                            && each.role() == Role.PROCESSING
                            && each.shutdownGroup().filter(group::equals).isPresent());
            if (parts.groups.containsKey(group) && !hasProcessing) {
                found.accept(Objection.error(
                        at + "/" + k,
                        Shown.quoted(group) + ", in which nothing is processing",
                        "a group with processing in it",
                        "Maybe the role of a load is wrong, or comes_after is meant."));
            }
        }
    }

    private static void unswitched(Load load, String at, Consumer<Objection> found) {
        load.shutdownGroup()
                .ifPresent(id -> found.accept(Objection.error(
                        at + "/shutdown_group",
                        Shown.quoted(id) + " though the load is unswitched",
                        "no group for an unswitched load",
                        SWITCH_IT)));
        if (!load.comesAfter().isEmpty()) {
            found.accept(Objection.error(
                    at + "/comes_after",
                    Shown.quoted(load.comesAfter()) + " though the load is unswitched",
                    "no order for an unswitched load",
                    SWITCH_IT));
        }
        load.fixed()
                .board()
                .ifPresent(id -> found.accept(Objection.error(
                        at + "/fixed/board",
                        Shown.quoted(id) + " though the load is unswitched",
                        "no board for an unswitched load",
                        SWITCH_IT)));
        load.fixed()
                .output()
                .ifPresent(output -> found.accept(Objection.error(
                        at + "/fixed/output",
                        output + " though the load is unswitched",
                        "no output for an unswitched load",
                        SWITCH_IT)));
    }

    private static void notItself(Load load, String other, String pointer, Consumer<Objection> found) {
        if (other.equals(load.id())) {
            String value = Shown.quoted(other) + ", the load itself";
            found.accept(Objection.error(pointer, value, "another load", "Maybe a copied entry was not changed."));
        }
    }

    private static String poles(int poles) {
        return Phrase.counted(poles, "pole");
    }
}
