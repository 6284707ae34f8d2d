package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;

/** A load that comes on before another that has to be on, or settled, first. */
final class Early {
    private Early() {}

    /** @param atSeconds when it may come on at the earliest */
    static BrokenRule by(BrokenKind kind, Placement load, Placement first, double atSeconds) {
        return Broken.by(kind)
                .load(load.id())
                .word("who", RuleWords.who(load))
                .board(RuleWords.boardOf(load))
                .other(first.id())
                .word("last", RuleWords.who(first))
                .at(RuleWords.leadOf(load))
                .figure(load.on(), atSeconds, "s")
                .build();
    }
}
