package evenrise.model.rules;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Words;
import evenrise.model.plan.Assignment;
import evenrise.model.project.Board;
import evenrise.model.project.Role;
import java.util.Collection;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Puts ids, figures and lists into the words of a message, the same on every machine. */
final class RuleWords {
    private static final int LONGEST_LIST = 12;

    private RuleWords() {}

    static String seconds(double seconds) {
        return Decimals.toThousandths(seconds) + " s";
    }

    static String seconds(OptionalDouble seconds) {
        return seconds.isPresent() ? seconds(seconds.getAsDouble()) : "no time";
    }

    static String amps(double amps) {
        return Decimals.toThousandths(amps) + " A";
    }

    /** A current beside the one that it is held against: as many digits as tell the two apart. */
    static String amps(double amps, double beside) {
        return Decimals.toThousandths(amps, beside) + " A";
    }

    /** A time beside the one that it is held against. */
    static String seconds(double seconds, double beside) {
        return Decimals.toThousandths(seconds, beside) + " s";
    }

    static String percent(double fraction) {
        return Decimals.toThousandths(100 * fraction) + " %";
    }

    static String quoted(String id) {
        return "'" + id + "'";
    }

    /** Ids in quotes, cut short where there are very many. */
    static String quoted(Collection<String> ids) {
        return listed(ids.stream().map(RuleWords::quoted).toList());
    }

    /** Words with commas between, cut short where there are very many. */
    static String listed(Collection<?> words) {
        String shown = words.stream().limit(LONGEST_LIST).map(String::valueOf).collect(Collectors.joining(", "));
        return words.size() <= LONGEST_LIST ? shown : shown + " and " + (words.size() - LONGEST_LIST) + " more";
    }

    /** The load by what it is and its id. */
    static String who(Placement placement) {
        Role role = placement.load().role();
        String noun = role == Role.AMPLIFIER ? "amplifier" : Words.word(role) + " load";
        return noun + " " + quoted(placement.id());
    }

    /** Where a sequenced load's output is. */
    static String outputOf(Placement placement) {
        return "output " + placement.output() + " of board " + quoted(boardOf(placement));
    }

    static String boardOf(Placement placement) {
        return placement.board().map(Board::id).orElse("none");
    }

    static String panelOf(Placement placement) {
        return quoted(placement.assignment().panel());
    }

    /** The place of a load's breaker: {@code panel P1 slot 7}. */
    static String seatOf(Placement placement) {
        return seatOf(placement.assignment());
    }

    static String seatOf(Assignment assignment) {
        return "panel " + assignment.panel() + " slot " + assignment.slot();
    }

    /** The place of a load's lead: {@code board B1 output 3}; empty where it has none. */
    static String leadOf(Placement placement) {
        return placement.board().isEmpty() ? "" : "board " + boardOf(placement) + " output " + placement.output();
    }

    /** {@code 1 pole}, {@code 3 poles}. */
    static String counted(int count, String noun) {
        return count + " " + noun + (count == 1 ? "" : "s");
    }
}
