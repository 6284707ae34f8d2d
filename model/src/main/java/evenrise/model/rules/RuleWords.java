package evenrise.model.rules;

import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.contract.Words;
import evenrise.model.plan.Assignment;
import evenrise.model.project.Board;
import evenrise.model.project.Role;
import java.util.Collection;

/** Puts ids, figures and lists into the words of a message, the same on every machine. */
final class RuleWords {
    private static final int LONGEST_LIST = 12;

    private RuleWords() {}

    static String percent(double fraction) {
        return THOUSANDTHS.percent(100 * fraction);
    }

    /** Ids in quotes, cut short where there are very many. */
    static String quoted(Collection<String> ids) {
        return Phrase.quoted(ids, LONGEST_LIST);
    }

    /** Words with commas between, cut short where there are very many. */
    static String listed(Collection<?> words) {
        return Phrase.listed(words, LONGEST_LIST);
    }

    /** The load by what it is and its id. */
    static String who(Placement placement) {
        Role role = placement.load().role();
        String noun = role == Role.AMPLIFIER ? "amplifier" : Words.word(role) + " load";
        return noun + " " + Phrase.quoted(placement.id());
    }

    /** Where a sequenced load's output is. */
    static String outputOf(Placement placement) {
        return "output " + placement.output() + " of board " + Phrase.quoted(boardOf(placement));
    }

    static String boardOf(Placement placement) {
        return placement.board().map(Board::id).orElse("none");
    }

    static String panelOf(Placement placement) {
        return Phrase.quoted(placement.assignment().panel());
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
}
