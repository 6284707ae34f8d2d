package evenrise.model.check;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.FormatVersion;
import evenrise.model.event.EventScript;
import evenrise.model.event.Happening;
import evenrise.model.event.ScriptEvent;
import evenrise.model.project.Board;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Load;
import evenrise.model.project.NodeSource;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SwitchedSystem;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Finds what makes an event script no script of a project. */
public final class ScriptChecks {
    private static final Set<Happening> OF_LOAD =
            Set.of(Happening.STAYS_CLOSED, Happening.STAYS_OPEN, Happening.LATE, Happening.EARLY, Happening.MENDED);
    private static final Set<Happening> OF_NODE =
            Set.of(Happening.MAINS, Happening.TRANSFER, Happening.TRANSFER_BACK, Happening.NEUTRAL_LOST);

    private final Project project;
    private final List<Objection> found = new ArrayList<>();

    private ScriptChecks(Project project) {
        this.project = project;
    }

    /** The format is ours, times do not go back, and each happening names what it is about, which exists. */
    public static List<Objection> errors(EventScript script, Project project) {
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
                found.add(Objection.error(
                        "/events/" + i + "/at_s",
                        Decimals.toThousandths(at),
                        "at least " + Decimals.toThousandths(last) + ", the time of what stands before it",
                        "Maybe put the events in the order of time."));
            }
            last = Math.max(last, at);
        }
    }

    private void event(String at, ScriptEvent event) {
        Happening kind = event.event();
        boolean ofGroup = kind == Happening.GROUP_ON || kind == Happening.GROUP_OFF;
        boolean ofBoard = kind == Happening.BOARD_DEAD || kind == Happening.BOARD_BACK;
        boolean trips = kind == Happening.TRIP || kind == Happening.RESET;
        Set<String> groups =
                project.shutdownGroups().stream().map(ShutdownGroup::id).collect(Collectors.toSet());
        Set<String> boards = project.boards().stream().map(Board::id).collect(Collectors.toSet());
        reference(at + "/group", event.group(), ofGroup, "shutdown groups", groups);
        reference(at + "/board", event.board(), ofBoard, "boards", boards);
        if (trips) {
            tripped(at, event);
        } else {
            load(at + "/load", event, OF_LOAD.contains(kind));
            node(at + "/node", event, OF_NODE.contains(kind));
        }
        system(at + "/system", event);
        boolean isMains = kind == Happening.MAINS;
        number(
                at + "/voltage_pct",
                event.voltagePercent().isPresent(),
                isMains,
                "a voltage in percent of the nominal one");
        number(
                at + "/by_s",
                event.bySeconds().isPresent(),
                kind == Happening.LATE || kind == Happening.EARLY,
                "a time in seconds");
        phases(at + "/phases", event, isMains);
    }

    /** A load, a panel or a node, and one of them. */
    private void tripped(String at, ScriptEvent event) {
        if (event.load().isPresent() && event.node().isPresent()) {
            found.add(Objection.error(
                    at + "/node", Shown.quoted(event.node().get()), "nothing beside a load", "Maybe delete it."));
        } else if (event.node().isPresent()) {
            reference(at + "/node", event.node(), true, "panels and nodes", points());
        } else {
            Set<String> loads = project.loads().stream().map(Load::id).collect(Collectors.toSet());
            reference(at + "/load", event.load(), true, "loads, or of the panels and nodes as node", loads);
        }
    }

    /** What switches a load is its own breaker, or the contactor that it is behind, which bears another's name. */
    private void load(String at, ScriptEvent event, boolean isWanted) {
        Set<String> loads =
                project.loads().stream().filter(Load::switched).map(Load::id).collect(Collectors.toSet());
        reference(at, event.load(), isWanted, "switched loads", loads);
        project.loads().stream()
                .filter(each -> isWanted && event.load().equals(Optional.of(each.id())))
                .flatMap(each -> each.comesWith().stream())
                .forEach(lead -> found.add(Objection.error(
                        at,
                        Shown.quoted(event.load().get()),
                        "a load with an output of its own",
                        "Maybe " + Shown.quoted(lead) + ", whose contactor it is behind.")));
    }

    private void node(String at, ScriptEvent event, boolean isWanted) {
        boolean isOptional = event.event() == Happening.MAINS;
        if (isOptional && event.node().isEmpty()) {
            return;
        }
        boolean transfers = event.event() == Happening.TRANSFER || event.event() == Happening.TRANSFER_BACK;
        reference(
                at,
                event.node(),
                isWanted,
                transfers ? "panels and nodes with an alternate_fed_from" : "panels and nodes",
                transfers ? transferred() : points());
    }

    private void system(String at, ScriptEvent event) {
        boolean isCommand = event.event() == Happening.SYSTEM_ON || event.event() == Happening.SYSTEM_OFF;
        boolean isContact = event.event() == Happening.EMERGENCY || event.event() == Happening.RELEASE;
        if (event.system().isPresent() && isCommand && !project.hasClocks()) {
            found.add(Objection.error(
                    at,
                    Shown.quoted(event.system().get()),
                    "nothing, as all starts by one command",
                    "Maybe state another overlap than together in the project."));
        } else if (event.system().isPresent()) {
            Set<String> systems =
                    project.systems().stream().map(SwitchedSystem::id).collect(Collectors.toSet());
            reference(at, event.system(), isCommand || isContact, "systems", systems);
        }
    }

    private Set<String> points() {
        Set<String> ids = new HashSet<>(Set.of("supply"));
        project.panels().forEach(each -> ids.add(each.id()));
        project.nodes().forEach(each -> ids.add(each.id()));
        return ids;
    }

    private Set<String> transferred() {
        Set<String> ids = new HashSet<>();
        project.panels().stream()
                .filter(each -> each.alternateFedFrom().isPresent())
                .forEach(each -> ids.add(each.id()));
        project.nodes().stream()
                .filter(each -> each.alternateFedFrom().isPresent())
                .forEach(each -> ids.add(each.id()));
        return ids;
    }

    private void reference(String at, Optional<String> id, boolean isWanted, String list, Set<String> known) {
        if (id.isEmpty() && isWanted) {
            found.add(Objection.error(at, "missing", "the id of one of the " + list, ""));
        } else if (id.isPresent() && !isWanted) {
            found.add(Objection.error(at, Shown.quoted(id.get()), "nothing with this event", "Maybe delete it."));
        } else if (id.isPresent() && !known.contains(id.get())) {
            found.add(Objection.error(
                    at,
                    Shown.quoted(id.get()),
                    "the id of one of the " + list,
                    Nearest.cure(id.get(), known, "Maybe it was renamed or removed.")));
        }
    }

    private void number(String at, boolean isThere, boolean isWanted, String what) {
        if (isThere != isWanted) {
            found.add(Objection.error(
                    at,
                    isWanted ? "missing" : "stated",
                    isWanted ? what : "nothing with this event",
                    isWanted ? "" : "Maybe delete it."));
        }
    }

    private void phases(String at, ScriptEvent event, boolean isMains) {
        List<Phase> there = feeding(event.node().orElse("supply")).phases();
        Set<Phase> strange = new HashSet<>(event.phases());
        there.forEach(strange::remove);
        if (!event.phases().isEmpty() && !isMains) {
            found.add(Objection.error(at, "stated", "nothing with this event", "Maybe delete it."));
        } else if (!strange.isEmpty()) {
            found.add(Objection.error(
                    at,
                    strange.stream().map(Phase::name).sorted().collect(Collectors.joining(", ")),
                    "phases of "
                            + event.node()
                                    .map(id -> "what feeds " + Shown.quoted(id))
                                    .orElse("the supply")
                            + ": " + there.stream().map(Phase::name).collect(Collectors.joining(", ")),
                    ""));
        }
    }

    /** The system of what feeds a point, or of a source itself. */
    private PhaseSystem feeding(String id) {
        Set<String> seen = new HashSet<>();
        String at = id;
        boolean isFirst = true;
        while (seen.add(at)) {
            String here = at;
            Optional<DistributionNode> node = project.nodes().stream()
                    .filter(each -> each.id().equals(here))
                    .findFirst();
            Optional<PhaseSystem> own = node.flatMap(DistributionNode::source)
                    .map(NodeSource::system)
                    .or(() -> node.flatMap(DistributionNode::transformer)
                            .map(it -> it.secondary().system()));
            boolean isSource = node.flatMap(DistributionNode::source).isPresent();
            if (own.isPresent() && (isSource || !isFirst)) {
                return own.get();
            }
            isFirst = false;
            at = node.flatMap(DistributionNode::fedFrom)
                    .or(() -> project.panels().stream()
                            .filter(each -> each.id().equals(here))
                            .findFirst()
                            .flatMap(Panel::fedFrom))
                    .orElse("supply");
        }
        return project.supply().system();
    }
}
