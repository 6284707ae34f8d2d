package evenrise.model.contract;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks a record that stands in a file as an object or as a bare list: the list is then the component {@link #value()},
 * whose key an object does not take.
 */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
public @interface BareList {
    /** Name of the component that holds the list. */
    String value();
}
