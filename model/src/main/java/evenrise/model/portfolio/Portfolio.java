package evenrise.model.portfolio;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import java.util.List;
import java.util.stream.IntStream;

/** Many plans that are found in one run: each project in each variant by each seed. */
public record Portfolio(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(
                meaning = "Project files, from the folder of this file; a folder stands for every project file in it"
                        + " and below",
                atLeast = 1,
                distinct = true)
        List<String> projects,

        @Field(meaning = "What each project is planned as; as it is, when absent", optional = true)
        List<Variant> variants,

        @Field(meaning = "First seed of chance", min = 0, max = 1_000_000_000, byDefault = "1")
        int firstSeed,

        @Field(
                meaning = "Seeds, one after another, by each of which every variant is planned",
                min = 1,
                max = 1_000_000,
                byDefault = "1")
        int seeds,

        @Field(meaning = "Moves that each search tries", min = 1, max = 2_000_000_000, byDefault = "200000")
        int moves) {

    /** The format that this software reads. */
    public static final String FORMAT = "evenrise-portfolio/1";

    public Portfolio {
        Contract.check(Portfolio.class, format, projects, variants, firstSeed, seeds, moves);
        projects = List.copyOf(projects);
        variants = variants.isEmpty() ? List.of(Variant.AS_IS) : List.copyOf(variants);
    }

    /** Every seed, in their order. */
    public List<Integer> allSeeds() {
        return IntStream.range(firstSeed, firstSeed + seeds).boxed().toList();
    }
}
