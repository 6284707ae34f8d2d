package evenrise.solver.script.contract;

import evenrise.model.handout.UnsetValues;

/** In a page: what stands in for absent fields comes with the plan, since annotations stay at home. */
public final class Defaults {
    private Defaults() {}

    public static <B> B into(B builder, Class<? extends Record> type) {
        UnsetValues.into(builder, type);
        return builder;
    }
}
