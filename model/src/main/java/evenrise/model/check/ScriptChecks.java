package evenrise.model.check;

import evenrise.model.contract.FormatVersion;
import evenrise.model.event.EventScript;
import evenrise.model.event.Happening;
import evenrise.model.event.ScriptEvent;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Finds what makes an event script no script of a project. */
public final class ScriptChecks {
    private final Project project;
    private final List<Finding> found = new ArrayList<>();

    private ScriptChecks(Project project) {
        this.project = project;
    }

    /** The format is ours, times do not go back, and each happening names what it is about, which exists. */
    public static List<Finding> errors(EventScript script, Project project) {
        ScriptChecks checks = new ScriptChecks(project);
        if (!FormatVersion.isRead(script.format(), EventScript.FORMAT)) {
            checks.found.add(Identity.format(script.format(), EventScript.FORMAT));
        }
        checks.times(script);
        for (int i = 0; i < script.events().size(); i++) {
            checks.event("/events/" + i, script.events().get(i));
        }
        return checks.found;
    }

    private void times(EventScript script) {
        double last = 0;
        for (int i = 0; i < script.events().size(); i++) {
            double at = script.events().get(i).atSeconds().orElse(last);
            if (at < last) {
                found.add(Finding.error(
                        "/events/" + i + "/at_s",
                        Shown.number(at),
                        "at least " + Shown.number(last) + ", the time of what stands before it",
                        "Maybe put the events in the order of time."));
            }
            last = Math.max(last, at);
        }
    }

    private void event(String at, ScriptEvent event) {
        boolean ofGroup = event.event() == Happening.GROUP_ON || event.event() == Happening.GROUP_OFF;
        boolean ofBoard = event.event() == Happening.BOARD_DEAD || event.event() == Happening.BOARD_BACK;
        boolean ofLoad = Set.of(
                        Happening.STAYS_CLOSED, Happening.STAYS_OPEN, Happening.LATE, Happening.EARLY, Happening.MENDED)
                .contains(event.event());
        Set<String> groups =
                project.shutdownGroups().stream().map(ShutdownGroup::id).collect(Collectors.toSet());
        Set<String> boards = project.boards().stream().map(Board::id).collect(Collectors.toSet());
        Set<String> loads =
                project.loads().stream().filter(Load::switched).map(Load::id).collect(Collectors.toSet());
        reference(at + "/group", event.group(), ofGroup, "shutdown groups", groups);
        reference(at + "/board", event.board(), ofBoard, "boards", boards);
        reference(at + "/load", event.load(), ofLoad, "switched loads", loads);
        boolean isMains = event.event() == Happening.MAINS;
        number(
                at + "/voltage_pct",
                event.voltagePercent().isPresent(),
                isMains,
                "a voltage in percent of the nominal one");
        number(
                at + "/by_s",
                event.bySeconds().isPresent(),
                event.event() == Happening.LATE || event.event() == Happening.EARLY,
                "a time in seconds");
        phases(at + "/phases", event, isMains);
    }

    private void reference(String at, Optional<String> id, boolean isWanted, String list, Set<String> known) {
        if (id.isEmpty() && isWanted) {
            found.add(Finding.error(at, "missing", "the id of one of the " + list, ""));
        } else if (id.isPresent() && !isWanted) {
            found.add(Finding.error(at, Shown.quoted(id.get()), "nothing with this event", "Maybe delete it."));
        } else if (id.isPresent() && !known.contains(id.get())) {
            found.add(Finding.error(
                    at,
                    Shown.quoted(id.get()),
                    "the id of one of the " + list,
                    Nearest.cure(id.get(), known, "Maybe it was renamed or removed.")));
        }
    }

    private void number(String at, boolean isThere, boolean isWanted, String what) {
        if (isThere != isWanted) {
            found.add(Finding.error(
                    at,
                    isWanted ? "missing" : "stated",
                    isWanted ? what : "nothing with this event",
                    isWanted ? "" : "Maybe delete it."));
        }
    }

    private void phases(String at, ScriptEvent event, boolean isMains) {
        Set<Phase> strange = new HashSet<>(event.phases());
        project.supply().system().phases().forEach(strange::remove);
        if (!event.phases().isEmpty() && !isMains) {
            found.add(Finding.error(at, "stated", "nothing with this event", "Maybe delete it."));
        } else if (!strange.isEmpty()) {
            found.add(Finding.error(
                    at,
                    strange.stream().map(Phase::name).sorted().collect(Collectors.joining(", ")),
                    "phases of the supply: "
                            + project.supply().system().phases().stream()
                                    .map(Phase::name)
                                    .collect(Collectors.joining(", ")),
                    ""));
        }
    }
}
