package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** One place where a plan breaks a hard rule. */
@FileRecord
public record BrokenRule(
        @Field(meaning = "The rule, as named in docs/rules.md", atLeast = 1)
        String rule,

        @Field(meaning = "What is broken, by how much, and the likely cure", atLeast = 1)
        String message)
        implements BrokenRuleBuilder.With {
    public BrokenRule {
        Contract.check(BrokenRule.class, rule, message);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static BrokenRuleBuilder builder() {
        return Defaults.into(BrokenRuleBuilder.unset(), BrokenRule.class);
    }
}
