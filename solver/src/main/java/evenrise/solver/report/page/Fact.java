package evenrise.solver.report.page;

/** One figure of the cover. */
public record Fact(String name, String value, String note) {}
