package evenrise.solver.rework;

import evenrise.model.contract.Phrase;
import evenrise.model.contract.Words;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.FindingText;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Every way in which a step of work may be wrong by itself, with its words; what it breaks of the plan is for the rules. */
enum WorkKind {
    TRIED_WHILE_OFF("load {load} is tried while it is off"),
    ON_WITHOUT_NEEDED_SYSTEM("load {load} is on while system {system}, which its own needs, is off or comes on"),
    ON_WITHOUT_BOARD_SUPPLY("load {load} is on by a board that load {other} feeds, which is off"),
    NOT_LOCKED_OUT("load {load} is worked on without being off and locked out"),
    PANEL_ISOLATED_UNDER_LOAD("panel {panel} is isolated while load {load} is on by it"),
    BOARD_ISOLATED_UNDER_LOAD("board {board} is isolated while load {load} is on by it"),
    VOLTAGE_TOO_EARLY("voltage comes back before load {load} was found without a fault and covers are on"),
    LIVE_PANEL("the breaker of load {load} is worked on in panel {panel}, which is live"),
    LIVE_BOARD("the lead of load {load} is worked on at board {board}, which is live"),
    WITHOUT_SUPPLY("load {load} is to come on while its panel or its board is isolated"),
    ON_WITHOUT_EARLIER("load {load} is on while load {other}, which it comes after, is off"),
    ON_WITHOUT_CONTACTOR("load {load} is on while load {other}, behind whose contactor it is, is off"),
    LIVE_BEFORE_FEEDER("panel {panel} is to be live again while panel {other}, which feeds it, is isolated"),
    UNLOCKED_UNASKED("load {load} is unlocked, but was not locked out"),
    WITHOUT_PLACE("load {load} is to come on without a slot or an output"),
    ON_WHILE_LOCKED_OUT("load {load} is to come on, but is locked out"),
    ON_AFTER_LATER_ROLE("load {load} comes on while load {other}, of a later role, is on"),
    ON_BEFORE_EARLIER("load {load} comes on while load {other}, which it comes after, is off"),
    OVER_BY_ITSELF("load {load} comes on by itself while all others are on, and its peak passes an inrush limit"),
    LOCKED_OUT_AT_COMMAND("load {load} is locked out at the on command"),
    DOES_NOT_FIT("load {load} does not fit in slot {slot} of panel {panel}"),
    TAKEN_SLOT("load {load} goes to slot {slot} of panel {panel}, where the breaker of load {other} is"),
    RESERVED_SLOT("slot {slot} of panel {panel} takes no breaker"),
    SPARE_IN_SLOT("load {load} goes to slot {slot} of panel {panel}, where a spare breaker is"),
    NO_SPARE("in slot {slot} of panel {panel} begins no spare breaker"),
    UNFIT_SPARE("in slot {slot} of panel {panel} is no spare breaker that suits load {load}"),
    SPARE_OUT_OF_LIVE_PANEL("the spare breaker in slot {slot} is taken out of panel {panel}, which is live"),
    LEAD_LEFT_BEHIND("the control lead of load {load} runs to the panel that its breaker has left"),
    TAKEN_OUTPUT("the lead of load {load} goes to an output that load {other} has"),
    STILL_OFF("load {load} is still off"),
    PANEL_STILL_ISOLATED("panel {panel} is still isolated"),
    BOARD_STILL_ISOLATED("board {board} is still isolated"),
    OFF_THOUGH_LIVE("load {load} is off, though it is to stay live"),
    TOO_MANY_OUT("{out} shutdown groups are out at once, allowed are {allowed}"),
    TOO_LONG("the stage takes {minutes} min, the longest night has {window} min"),
    NOT_TRIED("load {load} was moved and is not tried"),
    NOT_LABELLED("load {load} was moved and its labels are not"),
    NOT_AS_PLANNED("load {load} is not where the new plan has it"),
    STILL_THERE("load {load} is gone, but its breaker or its lead is still there"),
    UNKNOWN_CURRENT("load {load} comes on by other lines than before while load {other} is there, whose current nobody"
            + " states"),
    NOT_SET_AS_PLANNED("board {board} is not set as in the new plan"),
    MORE_OVER_LIMIT("a conductor carries more over its limit than at the start; its excess alone grew");

    /** Stands for the name of a rule: docs/rework.md says what holds at every step. */
    static final String RULE = "work";

    private final String statement;

    WorkKind(String statement) {
        this.statement = statement;
    }

    static Subject load(String id) {
        return new Subject(SubjectKind.LOAD, id);
    }

    static Subject system(String id) {
        return new Subject(SubjectKind.SYSTEM, id);
    }

    static Subject panel(String id) {
        return new Subject(SubjectKind.PANEL, id);
    }

    static Subject board(String id) {
        return new Subject(SubjectKind.BOARD, id);
    }

    /** @param subjects of two loads, the one that the statement begins with comes first */
    BrokenRule about(Subject... subjects) {
        return about(Map.of(), List.of(subjects));
    }

    BrokenRule inSlot(int slot, Subject... subjects) {
        return about(Map.of("slot", String.valueOf(slot)), List.of(subjects));
    }

    /** Of a stage as a whole. */
    BrokenRule with(Map<String, String> figures) {
        return about(figures, List.of());
    }

    private BrokenRule about(Map<String, String> more, List<Subject> subjects) {
        Map<String, String> words = new HashMap<>(more);
        for (Subject each : subjects) {
            String name = words.containsKey(Words.word(each.kind())) ? "other" : Words.word(each.kind());
            words.put(name, Phrase.quoted(each.id()));
        }
        return BrokenRule.builder()
                .rule(RULE)
                .kind(Words.word(this))
                .subjects(subjects)
                .message(FindingText.of(FindingText.filled(statement, words), ""))
                .build();
    }
}
