package evenrise.solver.desk;

import evenrise.model.contract.Field;

/** What windows ask of portfolios. */
public final class PortfolioRequests {
    private PortfolioRequests() {}

    /** A portfolio's folder is looked at. */
    public record Store(
            @Field(meaning = "Folder, from the project's file", byDefault = "\"\"")
            String store) {}

    /** A plan of it is to lie on the desk. */
    public record OpenPlan(
            @Field(meaning = "Folder, from the project's file", byDefault = "\"\"")
            String store,

            @Field(meaning = "Key of the plan", atLeast = 1) String key,

            @Field(
                    meaning = "Whether what is asked is wanted, where it is a plan of another project than the desk's",
                    byDefault = "false")
            boolean confirmed) {}
}
