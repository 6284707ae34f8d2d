package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;

/** One place where a plan breaks a hard rule. */
public record BrokenRule(
        @Field(meaning = "The rule, as named in docs/rules.md", atLeast = 1)
        String rule,

        @Field(meaning = "What is broken, by how much, and the likely cure", atLeast = 1)
        String message) {
    public BrokenRule {
        Contract.check(BrokenRule.class, rule, message);
    }
}
