package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What can be bought and what work costs, for estimates; board types carry their price themselves. */
@FileRecord
public record Catalogue(
        @Field(meaning = "Currency of every price, such as EUR", atLeast = 1)
        String currency,

        @Field(meaning = "Kinds of panel", byDefault = "[]") List<PanelType> panelTypes,

        @Field(meaning = "Kinds of breaker, cheapest rating first", byDefault = "[]")
        List<BreakerPrice> breakers,

        @Field(meaning = "Work for one breaker and its cable, for each pole", min = 0, optional = true)
        OptionalDouble labourPerPole,

        @Field(meaning = "Work for the control lead of one switched breaker", min = 0, optional = true)
        OptionalDouble labourPerLead,

        @Field(meaning = "Work for one board", min = 0, optional = true)
        OptionalDouble labourPerBoard,

        @Field(meaning = "Work for one panel", min = 0, optional = true)
        OptionalDouble labourPerPanel,

        @Field(meaning = "Whether a board may switch breakers of every panel; else only of its own", byDefault = "true")
        boolean boardsReachAll,

        @Field(meaning = "Kinds of transformer", byDefault = "[]")
        List<TransformerPrice> transformers,

        @Field(meaning = "Kinds of node that are neither transformers nor sources", byDefault = "[]")
        List<NodePrice> nodes,

        @Field(meaning = "Kinds of feeder of panels and nodes", byDefault = "[]")
        List<FeederPrice> feeders,

        @Field(meaning = "Kinds of contactor", byDefault = "[]")
        List<ContactorPrice> contactors,

        @Field(meaning = "Work for one node, transformers and sources among them", min = 0, optional = true)
        OptionalDouble labourPerNode,

        @Field(meaning = "Work for one contactor", min = 0, optional = true)
        OptionalDouble labourPerContactor,

        @Field(
                meaning =
                        "What no price covers, printed with every price; an empty list says that there is nothing, and"
                                + " a usual list is printed when absent",
                optional = true)
        Optional<List<String>> exclusions,

        @Field(
                meaning = "Work by hours and their rate; what stands here has no labour_per_… beside it",
                optional = true)
        Optional<LabourHours> labourHours,

        @Field(
                meaning = "Kinds of circuit cable, by length; cables of circuits are listed only where there are some",
                byDefault = "[]")
        List<CablePrice> cables,

        @Field(
                meaning =
                        "Price of what a control lead needs more where its board is in another panel than its breaker",
                min = 0,
                optional = true)
        OptionalDouble leadBetweenPanels,

        @Field(meaning = "What is added in percent, in this order", byDefault = "[]")
        List<AddedPercentage> percentages,

        @Field(
                meaning = "Where its prices are from and of which day, as it is printed with every price",
                optional = true)
        Optional<String> source)
        implements CatalogueBuilder.With {
    public Catalogue {
        Contract.check(
                Catalogue.class,
                currency,
                panelTypes,
                breakers,
                labourPerPole,
                labourPerLead,
                labourPerBoard,
                labourPerPanel,
                boardsReachAll,
                transformers,
                nodes,
                feeders,
                contactors,
                labourPerNode,
                labourPerContactor,
                exclusions,
                labourHours,
                cables,
                leadBetweenPanels,
                percentages,
                source);
        panelTypes = List.copyOf(panelTypes);
        breakers = List.copyOf(breakers);
        transformers = List.copyOf(transformers);
        nodes = List.copyOf(nodes);
        feeders = List.copyOf(feeders);
        contactors = List.copyOf(contactors);
        exclusions = exclusions.map(List::copyOf);
        cables = List.copyOf(cables);
        percentages = List.copyOf(percentages);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static CatalogueBuilder builder() {
        return Defaults.into(CatalogueBuilder.unset(), Catalogue.class);
    }
}
