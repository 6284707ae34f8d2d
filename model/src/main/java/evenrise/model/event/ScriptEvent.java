package evenrise.model.event;

import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Decimals;
import evenrise.model.contract.Field;
import evenrise.model.project.Phase;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** One thing that happens to the system from outside, and when. */
public record ScriptEvent(
        @Field(
                meaning = "When it happens; 5 s after all has come to rest when absent",
                min = 0,
                max = 1_000_000,
                optional = true)
        OptionalDouble atSeconds,

        @Field(meaning = "What happens") Happening event,

        @Field(meaning = "Shutdown group, of group-on and group-off", optional = true)
        Optional<String> group,

        @Field(meaning = "Board, of board-dead and board-back", optional = true)
        Optional<String> board,

        @Field(
                meaning = "Load, of stays-closed, stays-open, late, early and mended, and of trip and reset",
                optional = true)
        Optional<String> load,

        @Field(meaning = "Voltage from now on, of the nominal one; of mains", min = 0, max = 200, optional = true)
        OptionalDouble voltagePercent,

        @Field(meaning = "Phases that mains is about; all when absent", distinct = true, optional = true)
        List<Phase> phases,

        @Field(meaning = "Time by which late closes late, and early early", min = 0, max = 3600, optional = true)
        OptionalDouble bySeconds,

        @Field(meaning = "System, of system-on, system-off, emergency and release; all when absent", optional = true)
        Optional<String> system,

        @Field(
                meaning = "Panel, node or supply, of mains, trip, reset, transfer, transfer-back and neutral-lost; of"
                        + " mains the supply when absent",
                optional = true)
        Optional<String> node) {
    public ScriptEvent {
        Contract.check(
                ScriptEvent.class,
                atSeconds,
                event,
                group,
                board,
                load,
                voltagePercent,
                phases,
                bySeconds,
                system,
                node);
        phases = List.copyOf(phases);
    }

    /** Something that is about nothing in particular. */
    public static ScriptEvent of(OptionalDouble atSeconds, Happening event) {
        return new ScriptEvent(
                atSeconds,
                event,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                List.of(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty());
    }

    public ScriptEvent withGroup(String id) {
        return new ScriptEvent(
                atSeconds, event, Optional.of(id), board, load, voltagePercent, phases, bySeconds, system, node);
    }

    public ScriptEvent withSystem(String id) {
        return new ScriptEvent(
                atSeconds, event, group, board, load, voltagePercent, phases, bySeconds, Optional.of(id), node);
    }

    /** At a panel, a node or the supply. */
    public ScriptEvent atNode(String id) {
        return new ScriptEvent(
                atSeconds, event, group, board, load, voltagePercent, phases, bySeconds, system, Optional.of(id));
    }

    public ScriptEvent withBoard(String id) {
        return new ScriptEvent(
                atSeconds, event, group, Optional.of(id), load, voltagePercent, phases, bySeconds, system, node);
    }

    public ScriptEvent withLoad(String id) {
        return new ScriptEvent(
                atSeconds, event, group, board, Optional.of(id), voltagePercent, phases, bySeconds, system, node);
    }

    public ScriptEvent late(String id, double seconds) {
        return new ScriptEvent(
                atSeconds,
                event,
                group,
                board,
                Optional.of(id),
                voltagePercent,
                phases,
                OptionalDouble.of(seconds),
                system,
                node);
    }

    /** Of some phases, or of all where {@code some} is empty. */
    public ScriptEvent voltage(double percent, List<Phase> some) {
        return new ScriptEvent(
                atSeconds, event, group, board, load, OptionalDouble.of(percent), some, bySeconds, system, node);
    }

    /** What happens, in a few words. */
    public String text() {
        String about = group.or(() -> board).or(() -> load).or(() -> node).orElse("");
        String in = system.map(" in "::concat).orElse("");
        return switch (event) {
            case SYSTEM_ON -> system.map(id -> "system " + id + " on").orElse("on command");
            case SYSTEM_OFF -> system.map(id -> "system " + id + " off").orElse("off command");
            case GROUP_ON -> "group " + about + " on";
            case GROUP_OFF -> "group " + about + " off";
            case LOCK -> "lock";
            case UNLOCK -> "unlock";
            case EMERGENCY -> "emergency begins" + in;
            case RELEASE -> "emergency released" + in;
            case MAINS -> mains();
            case BOARD_DEAD -> "board " + about + " dies";
            case BOARD_BACK -> "board " + about + " works again";
            case STAYS_CLOSED -> "load " + about + " no longer opens";
            case STAYS_OPEN -> "load " + about + " no longer closes";
            case LATE -> "load " + about + " closes " + THOUSANDTHS.seconds(bySeconds.orElse(0)) + " late";
            case EARLY -> "load " + about + " closes " + THOUSANDTHS.seconds(bySeconds.orElse(0)) + " early";
            case MENDED -> "load " + about + " is mended";
            case TRIP -> load.isPresent() ? "breaker of load " + about + " trips" : "feeder of " + about + " trips";
            case RESET ->
                load.isPresent()
                        ? "breaker of load " + about + " closes again"
                        : "feeder of " + about + " closes again";
            case TRANSFER -> about + " goes to its alternate";
            case TRANSFER_BACK -> about + " goes back to what feeds it";
            case NEUTRAL_LOST -> "neutral of " + about + " is lost";
        };
    }

    private String mains() {
        double percent = voltagePercent.orElse(100);
        String place =
                node.map(id -> "feed of " + id + (percent == 0 ? " fails" : "")).orElse("mains fail");
        String source = node.map("feed of "::concat).orElse("mains");
        String what = percent == 0 ? place : source + " at " + Decimals.toThousandths(percent) + " %";
        return phases.isEmpty() ? what : what + " on " + phases.toString().replaceAll("[\\[\\]]", "");
    }
}
