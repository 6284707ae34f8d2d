package evenrise.model.check;

import evenrise.model.contract.Decimals;
import evenrise.model.project.Load;
import evenrise.model.project.SwitchedBy;
import java.util.Optional;
import java.util.function.Consumer;

/** Loads behind a contactor say nothing that their contactor's load says, and times are asked only of what is switched. */
final class Contactors {
    private final ProjectParts parts;
    private final Consumer<Objection> found;

    private Contactors(ProjectParts parts, Consumer<Objection> found) {
        this.parts = parts;
        this.found = found;
    }

    static void check(ProjectParts parts, Consumer<Objection> found) {
        Contactors check = new Contactors(parts, found);
        for (int i = 0; i < parts.project.loads().size(); i++) {
            Load load = parts.project.loads().get(i);
            String at = "/loads/" + i;
            if (load.comesWith().isPresent() && parts.knows("/loads")) {
                check.behind(load, at);
            }
            if (!load.switched() && parts.knows(at + "/switched")) {
                check.unswitched(load, at);
            }
        }
    }

    private void behind(Load load, String at) {
        String name = load.comesWith().orElseThrow();
        Optional<Load> lead = parts.leadOf(load);
        if (lead.isEmpty()) {
            String cure = Nearest.cure(name, parts.loads.keySet(), "Maybe it was renamed or removed.");
            error(at + "/comes_with", Shown.quoted(name), "the id of one of the loads", cure);
            return;
        }
        if (name.equals(load.id())) {
            error(at + "/comes_with", Shown.quoted(name) + ", the load itself", "another load", "Maybe leave it out.");
            return;
        }
        boolean hasContactor = lead.get().switched()
                && lead.get().switchedBy() == SwitchedBy.CONTACTOR
                && lead.get().comesWith().isEmpty();
        if (!hasContactor) {
            error(
                    at + "/comes_with",
                    Shown.quoted(name) + ", which is switched by no contactor of its own",
                    "a switched load with switched_by contactor",
                    "Maybe state that of it, or name the load whose contactor it is.");
        }
        if (!load.switched()) {
            error(at + "/switched", "false though the load comes with another", "true", "Maybe leave out comes_with.");
        }
        same(load.shutdownGroup(), lead.get().shutdownGroup(), "group", at + "/shutdown_group", name);
        same(load.system(), lead.get().system(), "system", at + "/system", name);
        if (load.offAfterSeconds() > 0) {
            own("off_after_s", Decimals.toThousandths(load.offAfterSeconds()), at, name);
        }
        load.fixed().board().ifPresent(board -> own("fixed/board", Shown.quoted(board), at, name));
        load.fixed().output().ifPresent(output -> own("fixed/output", "" + output, at, name));
        load.fixed().onSeconds().ifPresent(on -> own("fixed/on_s", Decimals.toThousandths(on), at, name));
    }

    private void same(Optional<String> mine, Optional<String> theirs, String what, String at, String lead) {
        if (mine.isPresent() && !mine.equals(theirs)) {
            error(
                    at,
                    Shown.quoted(mine.get()) + ", while load " + Shown.quoted(lead) + ", which it comes with, has "
                            + theirs.map(Shown::quoted).orElse("none"),
                    "the same " + what + ", or none stated",
                    "Maybe leave it out.");
        }
    }

    private void own(String field, String value, String at, String lead) {
        error(
                at + "/" + field,
                value + " though the load comes with " + Shown.quoted(lead),
                "nothing: it is switched by that load's output",
                "Maybe state it of that load.");
    }

    private void unswitched(Load load, String at) {
        if (load.switchedBy() == SwitchedBy.CONTACTOR) {
            notSwitched("switched_by", "contactor", at);
        }
        if (load.offAfterSeconds() > 0) {
            notSwitched("off_after_s", Decimals.toThousandths(load.offAfterSeconds()), at);
        }
        load.fixed().onSeconds().ifPresent(on -> notSwitched("fixed/on_s", Decimals.toThousandths(on), at));
    }

    private void notSwitched(String field, String value, String at) {
        error(
                at + "/" + field,
                value + " though the load is unswitched",
                "nothing for an unswitched load",
                "Maybe set switched to true.");
    }

    private void error(String pointer, String value, String expected, String cure) {
        found.accept(Objection.error(pointer, value, expected, cure));
    }
}
