package evenrise.model.event;

import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** A happening in numbers, which shrink; it becomes one of a project by counting. */
record RawEvent(int kind, int gap, int which, int amount) {
    private static final double[] GAPS = {0, 0.01, 0.3, 1, 2.5, 4, 7, 20};
    private static final double[] VOLTS = {100, 0, 95, 85, 75, 65, 40};
    private static final List<Happening> SOUND = List.of(
            Happening.SYSTEM_ON,
            Happening.SYSTEM_OFF,
            Happening.EMERGENCY,
            Happening.RELEASE,
            Happening.MAINS,
            Happening.GROUP_OFF,
            Happening.GROUP_ON,
            Happening.LOCK,
            Happening.UNLOCK);
    private static final List<Happening> FAULTS = List.of(
            Happening.BOARD_DEAD,
            Happening.BOARD_BACK,
            Happening.STAYS_CLOSED,
            Happening.STAYS_OPEN,
            Happening.LATE,
            Happening.EARLY,
            Happening.MENDED);

    /** The script that these make for a project; what the project has nothing for is left out. */
    static EventScript script(List<RawEvent> raw, Project project, boolean withFaults) {
        List<Happening> kinds = new ArrayList<>(SOUND);
        if (withFaults) {
            kinds.addAll(FAULTS);
        }
        List<ScriptEvent> events = new ArrayList<>();
        events.add(ScriptEvent.of(OptionalDouble.of(0), Happening.SYSTEM_ON));
        double now = 0;
        for (RawEvent each : raw) {
            boolean rests = each.gap >= GAPS.length || now < 0;
            now = rests ? -1 : now + GAPS[each.gap];
            Happening kind = kinds.get(each.kind % kinds.size());
            each.of(ScriptEvent.of(rests ? OptionalDouble.empty() : OptionalDouble.of(now), kind), project, events);
        }
        return new EventScript("drawn", events);
    }

    private void of(ScriptEvent event, Project project, List<ScriptEvent> events) {
        List<String> switched =
                project.loads().stream().filter(Load::switched).map(Load::id).toList();
        List<Phase> phases = project.supply().system().phases();
        switch (event.event()) {
            case MAINS ->
                events.add(event.voltage(
                        VOLTS[amount % VOLTS.length],
                        which % 3 > 0 ? List.of() : List.of(phases.get(amount / VOLTS.length % phases.size()))));
            case GROUP_OFF, GROUP_ON -> {
                if (!project.shutdownGroups().isEmpty()) {
                    events.add(event.withGroup(project.shutdownGroups()
                            .get(which % project.shutdownGroups().size())
                            .id()));
                }
            }
            case BOARD_DEAD, BOARD_BACK -> {
                if (!project.boards().isEmpty()) {
                    events.add(event.withBoard(project.boards()
                            .get(which % project.boards().size())
                            .id()));
                }
            }
            case STAYS_CLOSED, STAYS_OPEN, MENDED -> {
                if (!switched.isEmpty()) {
                    events.add(event.withLoad(switched.get(which % switched.size())));
                }
            }
            case LATE, EARLY -> {
                if (!switched.isEmpty()) {
                    events.add(event.late(switched.get(which % switched.size()), amount / 4.0));
                }
            }
            default -> events.add(event);
        }
    }

    /** A script as somebody would write it down. */
    static String text(EventScript script) {
        StringBuilder text = new StringBuilder();
        script.events()
                .forEach(each -> text.append("\n  ")
                        .append(each.atSeconds().isPresent() ? each.atSeconds().getAsDouble() + " s " : "at rest ")
                        .append(each.text()));
        return text.toString();
    }
}
