package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;

/** What the electrical review needs to know of the whole installation; no hard rule depends on it. */
@FileRecord
public record Electrical(
        @Field(meaning = "Body of rules that the review goes by", optional = true)
        Optional<Practice> practice,

        @Field(meaning = "What stands behind the supply", optional = true)
        Optional<SupplySource> source,

        @Field(meaning = "How cables are laid where a circuit or feeder does not say", optional = true)
        Optional<Installation> installation,

        @Field(meaning = "What the dips of the sequence are held against", distinct = true, byDefault = "[]")
        List<DipCriterion> dipCriteria,

        @Field(meaning = "How unequal line currents may be", optional = true)
        Optional<UnbalanceLimits> unbalance)
        implements ElectricalBuilder.With {
    /** Of which nothing is stated. */
    public static final Electrical UNKNOWN = builder().build();

    public Electrical {
        Contract.check(Electrical.class, practice, source, installation, dipCriteria, unbalance);
        dipCriteria = List.copyOf(dipCriteria);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static ElectricalBuilder builder() {
        return Defaults.into(ElectricalBuilder.unset(), Electrical.class);
    }
}
