package evenrise.model.check;

import evenrise.model.project.BoardType;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Predicate;

/** Kinds of board state the times that belong to their timing, and no others. */
final class BoardTypeChecks {
    private BoardTypeChecks() {}

    static void check(ProjectParts parts, Consumer<Objection> found) {
        check(parts.project.boardTypes(), parts::knows, found);
    }

    /** @param knows whether what a pointer names was read */
    static void check(List<BoardType> types, Predicate<String> knows, Consumer<Objection> found) {
        for (int i = 0; i < types.size(); i++) {
            String at = "/board_types/" + i;
            if (knows.test(at + "/timing")) {
                times(knows, types.get(i), at, found);
            }
            if (types.get(i).spareOutputs() > types.get(i).outputs()
                    && knows.test(at + "/outputs")
                    && knows.test(at + "/spare_outputs")) {
                found.accept(Objection.error(
                        at + "/spare_outputs",
                        "" + types.get(i).spareOutputs(),
                        "at most " + types.get(i).outputs() + ", the outputs of the board",
                        ""));
            }
        }
    }

    private static void times(Predicate<String> knows, BoardType type, String at, Consumer<Objection> found) {
        if (type.isTimedByOutput()) {
            none(type.startDelaySeconds(), at + "/start_delay_s", found);
            none(type.stepSeconds(), at + "/step_s", found);
            if (type.timesSeconds().isEmpty() && knows.test(at + "/times_s")) {
                found.accept(Objection.error(
                        at + "/times_s",
                        "missing",
                        "a list of numbers, or a range with from, to and by: each output has a time of its own",
                        "Maybe add \"times_s\"."));
            }
            type.timesSeconds()
                    .filter(times -> !times.isWhole() && knows.test(at + "/times_s"))
                    .ifPresent(times -> found.accept(Objection.error(
                            at + "/times_s",
                            "no range",
                            "from, to and by, and to no less than from",
                            "Maybe write the times as a list.")));
            return;
        }
        some(knows, type.startDelaySeconds(), "start_delay_s", at, found);
        some(knows, type.stepSeconds(), "step_s", at, found);
        if (type.timesSeconds().isPresent()) {
            found.accept(Objection.error(
                    at + "/times_s",
                    "there though the board has one start delay and one step",
                    "nothing, or timing each",
                    "Maybe set timing to each."));
        }
    }

    private static void none(List<Double> times, String at, Consumer<Objection> found) {
        if (!times.isEmpty()) {
            found.accept(Objection.error(
                    at,
                    "there though each output has a time of its own",
                    "nothing, or timing stepped",
                    "Maybe write them as times_s."));
        }
    }

    private static void some(
            Predicate<String> knows, List<Double> times, String key, String at, Consumer<Objection> found) {
        if (times.isEmpty() && knows.test(at + "/" + key)) {
            found.accept(Objection.error(at + "/" + key, "missing", "a list of numbers", "Maybe add \"" + key + "\"."));
        }
    }
}
