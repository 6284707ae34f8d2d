package evenrise.model.rules;

import evenrise.model.contract.Words;
import evenrise.model.plan.BrokenRule;

/**
 * Every way in which a hard rule may be broken, with the words for it: what is wrong, and the likely cure. A
 * {@code {word}} stands for a part of the finding, see {@link Broken}.
 */
enum BrokenKind {
    UNKNOWN_LOAD(
            "assigned",
            "the plan assigns load {load}, which the project does not have",
            "it was renamed or taken out: delete the assignment"),
    ASSIGNED_TWICE(
            "assigned",
            "load {load} is assigned once more, in slot {slot} of panel {panel}; exactly one assignment is allowed",
            "delete all but the right one"),
    NOT_ASSIGNED("assigned", "load {load} has no assignment, exactly one is needed", "give it a free slot{output}"),

    UNKNOWN_BOARD(
            "board-setting",
            "the plan sets board {board}, which the project does not have",
            "it was renamed or taken out: delete the setting"),
    SET_TWICE(
            "board-setting",
            "board {board} is set once more, to a start delay of {set}; exactly one setting is allowed",
            "delete all but the right one"),
    NOT_SET(
            "board-setting",
            "board {board} has no setting, it needs a start delay and a step",
            "take those that its type {type} offers first"),
    NOT_OFFERED(
            "board-setting",
            "board {board} is set to a {what} of {set}, its type {type} offers {offered} s",
            "set {nearest}, the nearest"),
    WITHOUT_TIME(
            "board-setting",
            "board {board} is set to no {what}, its type {type} offers {offered} s",
            "set {first}, the first"),
    NEEDLESS_TIME(
            "board-setting",
            "board {board} is set to {what} of {set}, but each of its outputs has a time of its own; none is allowed",
            "delete it, and write on_s of each load"),

    NEEDLESS_SWITCHING(
            "output",
            "load {load} is not switched, but has {what}; none is allowed",
            "clear it, or make the load a switched one"),
    BEHIND_CONTACTOR(
            "output",
            "load {load} is behind the contactor of load {other}, but has {what}; none is allowed",
            "clear it, or let the load come with nothing"),
    SHARED_OUTPUT(
            "output",
            "load {load} and load {other} share output {output} of board {board}; one load an output is allowed",
            "move one of them to a free output"),
    NO_OUTPUT(
            "output",
            "load {load} is switched, but {missing}; one output of its own is needed",
            "move it to a free output of a board that reaches panel {panel}"),

    OUT_OF_REACH(
            "reach",
            "load {load} in panel {panel} is on board {board}, which reaches only {reached}",
            "move the load to such a panel, or to a board that reaches its own"),

    STALE_TIME(
            "step-time",
            "load {load}: the plan says {what} at {said}, but {giver} gives {given} (within 0.5 ms)",
            "the board's setting or the output was changed by hand: write {given}"),

    STALE_PHASES(
            "phase",
            "load {load}: the plan says {said}, but slots {slots} of panel {panel} lie on {phases}",
            "the slot was changed by hand: write {phases}"),

    NO_SUCH_PANEL(
            "slot",
            "load {load} is in panel {panel}, which the project does not have",
            "move it to one of the project's panels"),
    TOO_MANY_POLES(
            "slot",
            "load {load} has {figure} poles, but panel {panel} has {phases}",
            "move it to a panel below another transformer"),
    DOES_NOT_FIT(
            "slot",
            "load {load} ({poles}) does not fit at slot {slot} of panel {panel}, whose slots are 1 to {slots}",
            "move it to a lower slot or to another panel"),
    TAKEN_SLOT(
            "slot",
            "load {load} takes slot {slot} of panel {panel}, which is taken by load {other}; one breaker a slot is"
                    + " allowed",
            "move it to a free slot"),
    RESERVED_SLOT(
            "slot",
            "load {load} takes slot {slot} of panel {panel}, which is reserved; one breaker a slot is allowed",
            "move it to a free slot"),
    POLES_ON_ONE_PHASE(
            "slot",
            "load {load} has {limit} poles, but slots {slots} of panel {panel} lie on phases {phases}; {limit} different"
                    + " ones are needed",
            "move it, or correct the panel's phase_rotation"),

    UNSWITCHED_SLOT(
            "switched-slot",
            "load {load} is switched, but slot {slot} of panel {panel} takes no switched breaker; {which}",
            "swap it with an unswitched load, or move it to another panel"),

    REFUSED_PANEL(
            "panel-allowed",
            "load {load} sits in panel {panel}, allowed are {allowed}",
            "move it there, or allow panel {panel}"),

    NOT_WHERE_FIXED(
            "fixed",
            "load {load} is fixed at {what} '{fixed}', but the plan has {has}",
            "move it back, or release it in the project"),
    NOT_WHEN_FIXED(
            "fixed",
            "load {load} is fixed to come on at {fixed}, but has {has} (within 0.5 ms)",
            "set its output's time, or release it in the project"),

    TOGETHER(
            "apart",
            "loads {load} and {other} must be apart, but both sit in panel {panel}",
            "move one of them to another panel"),

    OTHER_ORIGIN(
            "same-phase",
            "loads {load} and {other} must touch the same phases, but sit below different transformers or sources",
            "move one of them to a panel below the other's"),
    OTHER_PHASES(
            "same-phase",
            "load {load} touches {here}, load {other} touches {there}, but both must touch the same phases",
            "move one of them to a row of the other's phase"),

    AUXILIARY_BEFORE_PROCESSING("processing-first", early("the last {last} comes on only at {limit}"), later()),
    AMPLIFIER_BEFORE_PROCESSING(
            "processing-first", early("processing is settled only at {limit} (load {other})"), later()),

    AMPLIFIER_BEFORE_AUXILIARY("amplifiers-last", early("the last {last} comes on only at {limit}"), later()),

    BEFORE_EARLIER("order", early("load {other}, which it comes after, is settled only at {limit}"), later()),

    MIXED_EMERGENCY(
            "emergency",
            "board {board} mixes loads that drop on an emergency ({drop}) with loads that hold ({hold}); one kind a board"
                    + " is allowed",
            "move the fewer to another board"),

    SPLIT_GROUP(
            "group-whole",
            "shutdown group {group} ({figure} loads) is split over boards {boards}; a group of up to {limit} loads, the"
                    + " outputs of the largest board, must sit on one",
            "move all of it to a board with enough outputs"),
    SHARED_BOARD(
            "group-whole",
            "shutdown group {group} is larger than any board, but shares board {board} with {strangers}; its boards may"
                    + " hold nothing else",
            "move those to another board"),

    INTERRUPTED_GROUP(
            "group-run",
            "shutdown group {group} is interrupted on board {board}: it has runs from outputs {outputs}, one run is"
                    + " allowed",
            "exchange outputs so that its loads follow each other"),

    SCATTERED_GROUP(
            "group-panel",
            "shutdown group {group} must sit in one panel, but is in {panels}",
            "move the fewer loads to the panel of the others"),

    OVER_RATING(
            "rating",
            "{node} phase {phase} runs at {figure}, allowed are {fraction} of {rated}, which is {limit}",
            "move a load to another phase or panel"),

    OVER_NEUTRAL(
            "neutral",
            "{node} carries {figure} in its neutral, allowed are {limit} (neutral_factor {factor})",
            "balance its one-pole loads better, or spread those rich in third harmonic"),

    OVER_INRUSH_LIMIT(
            "inrush-limit",
            "{node} peaks at {figure} on phase {phase} at {at}, allowed are {limit}",
            "switch the loads with the highest inrush further apart or earlier, or spread them over phases"),

    OVER_WHEN_MAINS_RETURN(
            "event-inrush",
            event("when the mains return"),
            "move unswitched loads to other panels or phases, or let a board switch them"),
    OVER_AT_RELEASE(
            "event-inrush",
            event("when an emergency is released"),
            "switch the dropped loads with the highest inrush further apart, or spread them over phases"),
    OVER_WHEN_BOARD_FAILS(
            "event-inrush",
            event("when {failing} fails"),
            "spread the board's loads over phases or panels, or over more boards"),
    OVER_IN_DIP(
            "event-inrush",
            event("when a deep dip is ridden through"),
            "spread the loads with the highest inrush over panels and phases"),

    TOO_LONG(
            "duration",
            "the sequence{whose} takes {figure}, allowed are {limit}; load {load} on board {board} comes on last",
            "shorten that board's step or start delay, or let more boards run in parallel"),

    MIXED_SYSTEMS(
            "system",
            "board {board} switches loads of systems {systems}; one is allowed",
            "move the fewer to another board"),
    OTHER_SYSTEM(
            "system",
            "board {board} is of system {own}, but switches loads of {systems}",
            "move them to a board of theirs"),
    FOLLOWS_OTHER_SYSTEM(
            "system",
            "board {board} switches loads of {systems}, but follows board {before}, which switches loads of {others};"
                    + " both must serve one system",
            "let it follow another board, or start with the start signal"),

    AWAY_FROM_CONTACTOR(
            "with",
            "load {load} sits in panel {panel}, but the contactor that it is behind, of load {other}, in {there}",
            "move it there, or let it come with another load"),

    OTHER_VOLTAGE(
            "voltage",
            "load {load} is for {limit} to neutral, but panel {panel} has {figure}; 5 % are allowed",
            "move it to a panel below another transformer"),

    MIRRORED_OFF(
            "off-delay",
            "load {load} is to go off {figure} late, but board {board} only mirrors its switching on",
            "move it to a board whose off is each"),

    FEW_SLOTS("spare", "panel {panel} " + leaves("free slots"), "move a load to another panel"),
    FEW_SWITCHED_SLOTS(
            "spare", "panel {panel} " + leaves("free slots for switched breakers"), "move a load to another panel"),
    LITTLE_ROOM(
            "spare", "panel {panel} " + leaves("room for further breakers of {poles}"), "move a load to another panel"),
    LITTLE_CURRENT(
            "spare",
            "{node} phase {phase} runs at {figure}, which leaves less than {spare} of {allowed} ({limit})",
            "move a load to another phase or panel"),
    FEW_OUTPUTS("spare", "board {board} " + leaves("outputs free"), "move a load to another panel");

    private final String rule;
    private final String statement;
    private final String cure;

    BrokenKind(String rule, String statement, String cure) {
        this.rule = rule;
        this.statement = statement;
        this.cure = cure;
    }

    /** The rule that is broken. */
    String rule() {
        return rule;
    }

    /** Whether that is what was found. */
    boolean is(BrokenRule found) {
        return found.kind().equals(Words.word(this));
    }

    /** What is wrong, without a full stop. */
    String statement() {
        return statement;
    }

    String cure() {
        return cure;
    }

    private static String early(String then) {
        return "{who} comes on at {figure} on board {board}, but " + then;
    }

    private static String later() {
        return "give board {board} a longer start delay, or move the load to a later output";
    }

    private static String event(String when) {
        return "{node} peaks at {figure} on phase {phase} " + when + ", allowed are {limit} (inrush_limit_holds_for)";
    }

    private static String leaves(String what) {
        return "leaves " + what + ": {figure}, wanted are {limit}";
    }
}
