package evenrise.model.rules;

/**
 * One place where a plan breaks a hard rule.
 *
 * @param rule the rule's name as in docs/rules.md, such as {@code group-whole}
 * @param message the load or place, the figure with its unit, what is allowed and the likely cure
 */
public record Violation(String rule, String message) {}
