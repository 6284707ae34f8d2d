package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;

/** A point of the distribution between the supply and panels: busbars, the secondary of a transformer, a further source. */
@FileRecord
public record DistributionNode(
        @Field(meaning = "Name by which the node is referred to; panels share these names", atLeast = 1)
        String id,

        @Field(
                meaning = "Node or panel that feeds it; the supply when absent, which may be named supply, too",
                optional = true)
        Optional<String> fedFrom,

        @Field(meaning = "Rated rms current of each line conductor", above = 0, max = 100_000)
        double ratedAmps,

        @Field(
                meaning = "Part of its rating that continuous running current may use; the supply's when absent",
                above = 0,
                max = 1,
                optional = true)
        OptionalDouble continuousFraction,

        @Field(meaning = "Capacity of the neutral over that of a line conductor", above = 0, max = 4, byDefault = "1")
        double neutralFactor,

        @Field(
                meaning = "Greatest allowed instantaneous peak on any phase; the hard rule holds it at nominal voltage",
                above = 0,
                optional = true)
        OptionalDouble inrushLimitAmps,

        @Field(meaning = "The transformer whose secondary the node is", optional = true)
        Optional<Transformer> transformer,

        @Field(meaning = "The source that the node is: a supply beside the supply, on the same clock", optional = true)
        Optional<NodeSource> source,

        @Field(
                meaning = "Wiring between what feeds it and the node; of a transformer on its primary side",
                optional = true)
        Optional<Feeder> feeder,

        @Field(
                meaning = "Least rms short-circuit current that the node and its devices can interrupt",
                above = 0,
                optional = true)
        OptionalDouble interruptingAmps,

        @Field(
                meaning = "What is known of the device before all that the node feeds: of a transformer the one on its"
                        + " secondary side",
                optional = true)
        Optional<Device> main,

        @Field(
                meaning = "Node or panel, of the same voltage, that it can be transferred to from what feeds it",
                optional = true)
        Optional<String> alternateFedFrom,

        @Field(
                meaning = "Time without voltage while it is transferred, either way; where there is an alternate",
                min = 0,
                max = 3600,
                optional = true)
        OptionalDouble transferSeconds,

        @Field(meaning = "Whether the transfer switches the neutral, too; not judged when absent", optional = true)
        Optional<Boolean> neutralSwitched)
        implements DistributionNodeBuilder.With {
    public DistributionNode {
        Contract.check(
                DistributionNode.class,
                id,
                fedFrom,
                ratedAmps,
                continuousFraction,
                neutralFactor,
                inrushLimitAmps,
                transformer,
                source,
                feeder,
                interruptingAmps,
                main,
                alternateFedFrom,
                transferSeconds,
                neutralSwitched);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static DistributionNodeBuilder builder() {
        return Defaults.into(DistributionNodeBuilder.unset(), DistributionNode.class);
    }
}
