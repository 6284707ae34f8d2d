package evenrise.solver.document;

import evenrise.model.rules.Distribution.Point;
import java.util.List;
import java.util.Optional;

/**
 * What stands together in one place and is fed from one other.
 *
 * @param id of its block on the drawing
 * @param location as the project states it
 * @param from what feeds it
 * @param points filled while the distribution is walked from above
 */
record RiserPlace(String id, String location, Optional<RiserPlace> from, List<Point> points) {
    /** There is one by each id. */
    @Override
    public boolean equals(Object other) {
        return other instanceof RiserPlace place && place.id.equals(id);
    }

    @Override
    public int hashCode() {
        return id.hashCode();
    }
}
