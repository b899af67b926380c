import './reviews/review.css';
import './reviews/agreement.css';
import './reviews/links.css';
import './seals/seal.css';
