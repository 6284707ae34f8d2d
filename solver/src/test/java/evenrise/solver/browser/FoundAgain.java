package evenrise.solver.browser;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import org.openqa.selenium.By;
import org.openqa.selenium.SearchContext;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WrapsElement;

/**
 * What stands in a place of the page whenever it is asked: a view is painted anew whenever something about it is told,
 * and what was found a moment before is then no longer there.
 */
final class FoundAgain implements InvocationHandler {
    private static final int MOST_LOOKS = 20;

    private final SearchContext page;
    private final By place;

    private FoundAgain(SearchContext page, By place) {
        this.page = page;
        this.place = place;
    }

    /** @throws org.openqa.selenium.NoSuchElementException where nothing stands there now */
    static WebElement in(SearchContext page, By place) {
        page.findElement(place);
        return (WebElement) Proxy.newProxyInstance(
                FoundAgain.class.getClassLoader(),
                new Class<?>[] {WebElement.class, WrapsElement.class},
                new FoundAgain(page, place));
    }

    @Override
    public Object invoke(Object proxy, Method method, Object[] arguments) throws Throwable {
        if (method.getDeclaringClass() == WrapsElement.class) {
            return page.findElement(place);
        }
        for (int left = MOST_LOOKS; ; left--) {
            try {
                return method.invoke(page.findElement(place), arguments);
            } catch (InvocationTargetException e) {
                if (!(e.getCause() instanceof StaleElementReferenceException) || left == 1) {
                    throw e.getCause();
                }
            }
        }
    }
}
