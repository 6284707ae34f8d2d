package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Why a load is where it is.
 *
 * @param load its id
 * @param from earlier plan that moves are counted from
 * @param everyExchange whether loads that are neither in its panel nor on its board are asked to exchange, too; of a large
 *     project that takes long
 * @since 0.1.0
 */
public record ExplainRequest(Source project, Source plan, String load, Optional<Source> from, boolean everyExchange) {
    public static ExplainRequest of(Path project, Path plan, String load) {
        return new ExplainRequest(Source.file(project), Source.file(plan), load, Optional.empty(), false);
    }
}
