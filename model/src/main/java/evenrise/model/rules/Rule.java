package evenrise.model.rules;

import java.util.List;

/** One hard rule. It reads a layout and never fails, however broken the plan behind it is. */
public interface Rule {
    /** Name of the rule in files, on screens and in docs/rules.md, such as {@code group-whole}. */
    String id();

    /** Every place where the layout breaks the rule, as messages; empty where it is kept. */
    List<String> broken(Layout layout);
}
