package evenrise.model.event;

import evenrise.model.contract.Contract;
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

        @Field(meaning = "Load, of stays-closed, stays-open, late, early and mended", optional = true)
        Optional<String> load,

        @Field(meaning = "Voltage from now on, of the nominal one; of mains", min = 0, max = 200, optional = true)
        OptionalDouble voltagePercent,

        @Field(meaning = "Phases that mains is about; all when absent", distinct = true, optional = true)
        List<Phase> phases,

        @Field(meaning = "Time by which late closes late, and early early", min = 0, max = 3600, optional = true)
        OptionalDouble bySeconds) {
    public ScriptEvent {
        Contract.check(ScriptEvent.class, atSeconds, event, group, board, load, voltagePercent, phases, bySeconds);
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
                OptionalDouble.empty());
    }

    public ScriptEvent withGroup(String id) {
        return new ScriptEvent(atSeconds, event, Optional.of(id), board, load, voltagePercent, phases, bySeconds);
    }

    public ScriptEvent withBoard(String id) {
        return new ScriptEvent(atSeconds, event, group, Optional.of(id), load, voltagePercent, phases, bySeconds);
    }

    public ScriptEvent withLoad(String id) {
        return new ScriptEvent(atSeconds, event, group, board, Optional.of(id), voltagePercent, phases, bySeconds);
    }

    public ScriptEvent late(String id, double seconds) {
        return new ScriptEvent(
                atSeconds, event, group, board, Optional.of(id), voltagePercent, phases, OptionalDouble.of(seconds));
    }

    /** Of some phases, or of all where {@code some} is empty. */
    public ScriptEvent voltage(double percent, List<Phase> some) {
        return new ScriptEvent(atSeconds, event, group, board, load, OptionalDouble.of(percent), some, bySeconds);
    }

    /** What happens, in a few words. */
    public String text() {
        String about = group.or(() -> board).or(() -> load).orElse("");
        return switch (event) {
            case SYSTEM_ON -> "on command";
            case SYSTEM_OFF -> "off command";
            case GROUP_ON -> "group " + about + " on";
            case GROUP_OFF -> "group " + about + " off";
            case LOCK -> "lock";
            case UNLOCK -> "unlock";
            case EMERGENCY -> "emergency begins";
            case RELEASE -> "emergency released";
            case MAINS -> mains();
            case BOARD_DEAD -> "board " + about + " dies";
            case BOARD_BACK -> "board " + about + " works again";
            case STAYS_CLOSED -> "load " + about + " no longer opens";
            case STAYS_OPEN -> "load " + about + " no longer closes";
            case LATE -> "load " + about + " closes " + Words.seconds(bySeconds.orElse(0)) + " late";
            case EARLY -> "load " + about + " closes " + Words.seconds(bySeconds.orElse(0)) + " early";
            case MENDED -> "load " + about + " is mended";
        };
    }

    private String mains() {
        double percent = voltagePercent.orElse(100);
        String what = percent == 0 ? "mains fail" : "mains at " + Words.number(percent) + " %";
        return phases.isEmpty() ? what : what + " on " + phases.toString().replaceAll("[\\[\\]]", "");
    }
}
