package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import evenrise.model.project.Practice;
import java.util.List;
import java.util.Optional;

/** What the electrical review says of a plan. */
@FileRecord
public record Review(
        @Field(meaning = "Body of rules that it went by", optional = true)
        Optional<Practice> practice,

        @Field(meaning = "What it has to say, in the order of the checks", byDefault = "[]")
        List<Remark> remarks,

        @Field(meaning = "What it has computed", byDefault = "[]")
        List<Quantity> quantities,

        @Field(meaning = "How many places each check judged", byDefault = "[]")
        List<CheckCount> checks)
        implements ReviewBuilder.With {
    public Review {
        Contract.check(Review.class, practice, remarks, quantities, checks);
        remarks = List.copyOf(remarks);
        quantities = List.copyOf(quantities);
        checks = List.copyOf(checks);
    }

    /** How many remarks are to be taken so. */
    public long count(Grade grade) {
        return remarks.stream().filter(remark -> remark.grade() == grade).count();
    }

    /** Each check and place counted. */
    public int checksMade() {
        return checks.stream().mapToInt(CheckCount::made).sum();
    }

    /** Each check and place counted. */
    public int checksNotMade() {
        return checks.stream().mapToInt(CheckCount::notMade).sum();
    }

    /** Begins with what a file gives that leaves everything out. */
    public static ReviewBuilder builder() {
        return Defaults.into(ReviewBuilder.unset(), Review.class);
    }
}
